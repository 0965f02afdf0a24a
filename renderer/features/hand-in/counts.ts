import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { HandInCheck } from '../../../src-core/gradebook/hand-in-check.ts';

/** What is counted before anything is written. */
export interface Counted {
  readonly inked: number;
  readonly pencilled: number;
  readonly flagged: number;
  readonly noClip: number;
  readonly slots: number;
  /** Clips that have an answer of nobody's. */
  readonly waiting: number;
  /** Squad criteria without points. */
  readonly pointsMissing: number;
  readonly openFlags: number;
  readonly absent: number;
  readonly excused: number;
  readonly isFinal: boolean;
}

/** Counts what stands in the sheet as drafted. */
export function countBefore(
  { squadScores }: Pick<LessonView, 'squadScores'>,
  { counts, isFinal }: HandInCheck,
): Counted {
  const { inked, pencilled, flagged, 'no-clip': noClip } = counts.slots;
  const slots = squadScores.flatMap((score) => score.slots);
  return {
    inked,
    pencilled,
    flagged,
    noClip,
    slots: inked + pencilled + flagged + noClip,
    waiting: slots.filter(({ clip }) => clip !== null && !clip.confirmed).length,
    pointsMissing: squadScores.flatMap(({ criteria }) => criteria).filter(({ decided }) => decided === null)
      .length,
    openFlags: counts.openFlags,
    absent: counts.pupils.absent,
    excused: counts.pupils.excused,
    isFinal,
  };
}
