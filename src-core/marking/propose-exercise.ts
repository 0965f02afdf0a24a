import type { RepsFinding } from '../evidence/reps-finding.ts';
import type { Seconds } from '../platform/units.ts';

/** Why a clip is taken to show the right exercise, or not; worded by the faces. */
export type ExerciseReason =
  | {
      readonly code: 'tempo-fits';
      readonly cycleSeconds: Seconds;
      readonly usualSeconds: readonly [Seconds, Seconds];
    }
  | {
      readonly code: 'tempo-differs';
      readonly cycleSeconds: Seconds;
      readonly usualSeconds: readonly [Seconds, Seconds];
    }
  | { readonly code: 'repeats-at-place'; readonly cycleSeconds: Seconds }
  | { readonly code: 'no-repetition' };

/** A suggestion about the exercise of one clip. */
export interface ExerciseProposal {
  readonly met: boolean;
  readonly confidence: number;
  readonly reason: ExerciseReason;
}

/** What is known beside the tempo. */
export interface ExerciseContext {
  /** The exercise's usual cycle, shortest and longest; null where the plan does not say. */
  readonly usualSeconds: readonly [Seconds, Seconds] | null;
  /** Whether the clip was filmed at the exercise's place; null where nobody knows. */
  readonly atPlace: boolean | null;
}

/**
 * Tempo and place make an exercise likely and never sure: other movements have the same beat, and what a body does
 * the machine does not judge. Judgement, not measured.
 */
const CONFIDENCE = { fitsAtPlace: 0.75, fits: 0.6, differs: 0.5, repeatsAtPlace: 0.5 } as const;

/** A movement and its half, or two sides read as one, are easily taken for each other. */
const READINGS = [1, 2, 0.5] as const;

/**
 * Whether a clip shows its slot's exercise, as far as tempo and place tell. The finding was counted without
 * a tempo in mind. Null: nothing speaks either way.
 */
export function proposeExercise(
  { count, cycleSeconds, confidence }: Pick<RepsFinding, 'count' | 'cycleSeconds' | 'confidence'>,
  { usualSeconds, atPlace }: ExerciseContext,
): ExerciseProposal | null {
  if (count === null || cycleSeconds === null) {
    return { met: false, confidence: CONFIDENCE.differs * confidence, reason: { code: 'no-repetition' } };
  }
  if (!usualSeconds) {
    if (atPlace !== true) return null;
    const reason = { code: 'repeats-at-place', cycleSeconds } as const;
    return { met: true, confidence: CONFIDENCE.repeatsAtPlace, reason };
  }
  const [shortest, longest] = usualSeconds;
  const fits = READINGS.some((times) => cycleSeconds * times >= shortest && cycleSeconds * times <= longest);
  if (!fits) {
    const reason = { code: 'tempo-differs', cycleSeconds, usualSeconds } as const;
    return { met: false, confidence: CONFIDENCE.differs * confidence, reason };
  }
  const trust = atPlace === true ? CONFIDENCE.fitsAtPlace : CONFIDENCE.fits;
  return { met: true, confidence: trust, reason: { code: 'tempo-fits', cycleSeconds, usualSeconds } };
}
