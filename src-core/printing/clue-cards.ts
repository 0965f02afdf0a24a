import { findStation, hasClues, type Plan, type SquadCode, type StationCode } from '../lesson/plan.ts';
import { groupBy } from '../platform/group-by.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import type { PrintProblem } from './print-problem.ts';
import { findSaid, type Said } from './said.ts';

/** A slip that lies at one station and leads to the next, without naming it. */
export interface ClueCard {
  /** Where it is read. */
  readonly at: StationCode;
  readonly place: Said;
  readonly clue: Said;
  /** What to do on the way. */
  readonly transit: Said | null;
  /** Whom it is for; null: every squad that walks on from here, for all of them walk to the same station. */
  readonly squads: readonly PaperSquad[] | null;
}

/** Slips to be cut out, as many as a page holds. */
export interface CluePage {
  readonly kind: 'clue-cards';
  readonly cards: readonly ClueCard[];
}

/** Slips a page. */
const CARDS_A_PAGE = 3;

interface Leg {
  readonly from: StationCode;
  readonly to: StationCode;
  readonly squad: SquadCode;
}

/**
 * The clues by where they are read, in the plan's order of stations: one slip for all squads where all walk on to the
 * same station, else one for each next station with the squads that go there. A leg to a station without a clue has no
 * slip, and is a problem where others have one.
 */
export function buildCluePages(
  plan: Plan,
  isGrey: boolean,
): { readonly pages: readonly CluePage[]; readonly problems: readonly PrintProblem[] } {
  const legs = plan.squads.flatMap(({ code, route }) =>
    route.slice(1).map((to, at): Leg => ({ from: route[at] ?? to, to, squad: code })),
  );
  const cards = plan.stations.flatMap(({ code }) =>
    buildCardsAt(plan, { at: code, legs: legs.filter(({ from }) => from === code), isGrey }),
  );
  const without = hasClues(plan)
    ? plan.stations.filter(({ code, clue }) => !clue && legs.some(({ to }) => to === code))
    : [];
  const pages: CluePage[] = [];
  for (let from = 0; from < cards.length; from += CARDS_A_PAGE) {
    pages.push({ kind: 'clue-cards', cards: cards.slice(from, from + CARDS_A_PAGE) });
  }
  return { pages, problems: without.map(({ code }) => ({ code: 'print-clue-missing', station: code })) };
}

function buildCardsAt(
  plan: Plan,
  { at, legs, isGrey }: { readonly at: StationCode; readonly legs: readonly Leg[]; readonly isGrey: boolean },
): readonly ClueCard[] {
  const groups = [...groupBy(legs, ({ to }) => to)];
  return groups.flatMap(([to, walked]): ClueCard[] => {
    const next = plan.stations.findIndex(({ code }) => code === to);
    const clue = findSaid(plan.stations[next]?.clue, `stations[${next}].clue`);
    if (!clue) return [];
    const here = plan.stations.findIndex(({ code }) => code === at);
    const squads = walked.map(({ squad }) => getPaperSquad(plan, squad, isGrey));
    return [
      {
        at,
        place: { text: findStation(plan, at)?.place ?? at, field: `stations[${here}].place` },
        clue,
        transit: findSaid(plan.stations[next]?.transit, `stations[${next}].transit`),
        squads: groups.length === 1 ? null : squads,
      },
    ];
  });
}
