import { findStation, type Plan, type StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import { getPupilName } from './route-key.ts';
import type { Said } from './said.ts';

/** What a squad carries: who belongs to it and where it begins. Says nothing of attendance or of who is not filmed. */
export interface SquadSheet {
  readonly kind: 'squad-sheet';
  readonly squad: PaperSquad;
  readonly heading: Said;
  readonly start: { readonly code: StationCode; readonly place: Said };
  readonly pupils: readonly Said[];
  /** Stations on the squad's route: as many boxes to fill in. */
  readonly stops: number;
}

/** Labels to be cut out and stuck to the tablets. */
export interface LabelPage {
  readonly kind: 'tablet-labels';
  readonly squads: readonly PaperSquad[];
}

/** Labels a page: two across, four down. */
const LABELS_A_PAGE = 8;

/** One sheet a squad, in the plan's order; pupils in the roster's. */
export function buildSquadSheets(
  plan: Plan,
  pupils: readonly Pupil[],
  isGrey: boolean,
): readonly SquadSheet[] {
  return plan.squads.map(({ code, startsAt, route }): SquadSheet => {
    const at = plan.stations.findIndex((station) => station.code === startsAt);
    return {
      kind: 'squad-sheet',
      squad: getPaperSquad(plan, code, isGrey),
      heading: { text: `${plan.lesson.title}, ${plan.lesson.className}`, field: 'lesson.title' },
      start: {
        code: startsAt,
        place: { text: findStation(plan, startsAt)?.place ?? startsAt, field: `stations[${at}].place` },
      },
      pupils: pupils.filter(({ squad }) => squad === code).map(getPupilName),
      stops: route.length,
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
