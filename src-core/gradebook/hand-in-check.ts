import type { LessonScore, PupilState } from '../marking/points.ts';
import type { SlotScore } from '../marking/squad-score.ts';

/** What is about to be written, counted before. */
export interface HandInCounts {
  /** Slots of all squads by how they stand. */
  readonly slots: Readonly<Record<SlotScore['state'], number>>;
  readonly pupils: Readonly<Record<PupilState, number>>;
  readonly openFlags: number;
}

/** Why marks were not handed in: nothing is written then. */
export type HandInProblem =
  | { readonly code: 'hand-in-flags-open'; readonly openFlags: number }
  /** The roster has none, or could not be read. */
  | { readonly code: 'hand-in-no-pupils' }
  | FilmsDeletedProblem;

/** The clips that marks are worked out from are gone: when, ISO 8601 in UTC. */
export interface FilmsDeletedProblem {
  readonly code: 'films-deleted';
  readonly at: string;
}

/** What of a hand-in does not stand in the score. */
export interface HandInOptions {
  readonly evenWithOpenFlags: boolean;
  /** Null: there are clips, or nothing was deleted. */
  readonly filmsDeletedAt?: string | null;
}

/** Whether marks may be handed in, and what stands in them. */
export interface HandInCheck {
  readonly counts: HandInCounts;
  /** Empty: go ahead. */
  readonly problems: readonly HandInProblem[];
  /** False where a mark is unconfirmed or a flag is open: the sheet will say so. */
  readonly isFinal: boolean;
}

/**
 * Refuses where there is no pupil, where the films were deleted (marks without them would be other marks), and while a
 * flag is open, unless the teacher asks for it all the same (`evenWithOpenFlags`). Unconfirmed marks
 * do not refuse: they are counted here and written as unconfirmed.
 */
export function checkHandIn(
  score: LessonScore,
  { evenWithOpenFlags, filmsDeletedAt: at = null }: HandInOptions,
): HandInCheck {
  const openFlags = score.openFlags.length;
  const slots = { inked: 0, pencilled: 0, flagged: 0, 'no-clip': 0 };
  for (const { state } of score.squads.flatMap((squad) => squad.slots)) slots[state] += 1;
  const pupils = { confirmed: 0, unconfirmed: 0, absent: 0, excused: 0 };
  for (const { state } of score.pupils) pupils[state] += 1;
  const noPupils: HandInProblem[] = score.pupils.length === 0 ? [{ code: 'hand-in-no-pupils' }] : [];
  const flagsOpen: HandInProblem[] =
    openFlags > 0 && !evenWithOpenFlags ? [{ code: 'hand-in-flags-open', openFlags }] : [];
  return {
    counts: { slots, pupils, openFlags },
    problems: at === null ? [...noPupils, ...flagsOpen] : [{ code: 'films-deleted', at }],
    isFinal: openFlags === 0 && pupils.unconfirmed === 0,
  };
}
