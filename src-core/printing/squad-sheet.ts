import { findStation, hasClues, type Plan, type StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import { getPupilName } from './route-key.ts';
import { findSaid, getHeading, type Said } from './said.ts';

/** What a squad carries: who belongs to it and where it begins. Says nothing of attendance or of who is not filmed. */
export interface SquadSheet {
  readonly kind: 'squad-sheet';
  readonly squad: PaperSquad;
  readonly heading: Said;
  readonly start: { readonly code: StationCode; readonly place: Said };
  readonly pupils: readonly Said[];
  /** Stations on the squad's route: as many boxes to fill in. */
  readonly stops: number;
  /** Their letters, where the squad walks by its list; null: by clues, so that only the first is told. */
  readonly letters: readonly StationCode[] | null;
}

/** A squad's list of stations, where no clue leads from one to the next. */
export interface RouteList {
  readonly kind: 'route-list';
  readonly squad: PaperSquad;
  readonly heading: Said;
  /** In the order to be walked, `number` from 1. */
  readonly stops: readonly {
    readonly number: number;
    readonly code: StationCode;
    readonly place: Said;
    /** What to do on the way there; null at the start too. */
    readonly transit: Said | null;
  }[];
}

/** Labels to be cut out and stuck to the tablets. */
export interface LabelPage {
  readonly kind: 'tablet-labels';
  readonly squads: readonly PaperSquad[];
}

/** Labels a page: two across, four down. */
const LABELS_A_PAGE = 8;

/** Stops on a page of a squad's list. */
const STOPS_A_PAGE = 12;

/**
 * One sheet a squad, in the plan's order; pupils in the roster's. Where no station has a clue, each is followed by the
 * squad's list of stations.
 */
export function buildSquadSheets(
  plan: Plan,
  pupils: readonly Pupil[],
  isGrey: boolean,
): readonly (SquadSheet | RouteList)[] {
  const sheets = buildSheets(plan, pupils, isGrey);
  if (hasClues(plan)) return sheets;
  return sheets.flatMap((sheet, at) => [
    sheet,
    ...buildRouteLists(plan, sheet, plan.squads[at]?.route ?? []),
  ]);
}

function buildRouteLists(
  { stations }: Plan,
  { squad, heading }: SquadSheet,
  route: readonly StationCode[],
): readonly RouteList[] {
  const stops = route.map((code, slot) => {
    const at = stations.findIndex((station) => station.code === code);
    return {
      number: slot + 1,
      code,
      place: { text: stations[at]?.place ?? code, field: `stations[${at}].place` },
      transit: slot === 0 ? null : findSaid(stations[at]?.transit, `stations[${at}].transit`),
    };
  });
  const lists: RouteList[] = [];
  for (let from = 0; from < stops.length; from += STOPS_A_PAGE) {
    lists.push({ kind: 'route-list', squad, heading, stops: stops.slice(from, from + STOPS_A_PAGE) });
  }
  return lists;
}

function buildSheets(plan: Plan, pupils: readonly Pupil[], isGrey: boolean): readonly SquadSheet[] {
  return plan.squads.map(({ code, startsAt, route }): SquadSheet => {
    const at = plan.stations.findIndex((station) => station.code === startsAt);
    return {
      kind: 'squad-sheet',
      squad: getPaperSquad(plan, code, isGrey),
      heading: getHeading(plan),
      start: {
        code: startsAt,
        place: { text: findStation(plan, startsAt)?.place ?? startsAt, field: `stations[${at}].place` },
      },
      pupils: pupils.filter(({ squad }) => squad === code).map(getPupilName),
      stops: route.length,
      letters: hasClues(plan) ? null : route,
    };
  });
}

/** The labels of all tablets. */
export function buildLabelPages(plan: Plan, isGrey: boolean): readonly LabelPage[] {
  const squads = plan.squads.map(({ code }) => getPaperSquad(plan, code, isGrey));
  const pages: LabelPage[] = [];
  for (let from = 0; from < squads.length; from += LABELS_A_PAGE) {
    pages.push({ kind: 'tablet-labels', squads: squads.slice(from, from + LABELS_A_PAGE) });
  }
  return pages;
}
