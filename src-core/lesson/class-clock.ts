import type { EpochMs } from '../platform/units.ts';
import type { Plan } from './plan.ts';

/** The instants between which the parts of a lesson run; a part that begins where it ends is left out. */
export interface ClassTimes {
  readonly startMs: EpochMs;
  /** End of the warm-up, and begin of the work. */
  readonly workMs: EpochMs;
  /** End of the work. */
  readonly clearUpMs: EpochMs;
  readonly endMs: EpochMs;
  /** Slots that the work is divided into, of one length. */
  readonly slots: number;
}

/** A part of the lesson; within the work, which slot (from 0). */
export type ClassPart =
  | { readonly kind: 'before' | 'warm-up' | 'clear-up' | 'after' }
  | { readonly kind: 'slot'; readonly slot: number };

/** Where a lesson stands at an instant. */
export interface ClassMoment {
  readonly part: ClassPart;
  /** What comes then; null after the end. */
  readonly next: ClassPart | null;
  /** Until then; 0 after the end. */
  readonly remainingMs: number;
  /** Of the whole part, from 1 at its begin to 0 at its end; 1 before the lesson. */
  readonly remainingShare: number;
}

const MINUTE_MS = 60_000;

/**
 * The times of a lesson in its period. `shiftMs` is how much later than its bell it began: the end stays at the bell,
 * and the work is shortened or lengthened. Shifted by a whole period and more, the lesson is held at another time, and
 * its end moves along.
 */
export function getClassTimes(
  { squads, timing }: Pick<Plan, 'squads' | 'timing'>,
  bell: { readonly startMs: EpochMs; readonly endMs: EpochMs },
  shiftMs: number,
): ClassTimes {
  const lengthMs = bell.endMs - bell.startMs;
  const startMs = bell.startMs + shiftMs;
  const endMs = Math.abs(shiftMs) < lengthMs ? bell.endMs : startMs + lengthMs;
  const workMs = Math.min(endMs, startMs + timing.warmUpMinutes * MINUTE_MS);
  const clearUpMs = Math.max(workMs, endMs - timing.clearUpMinutes * MINUTE_MS);
  const slots = Math.max(...squads.map(({ route }) => route.length));
  return { startMs, workMs, clearUpMs, endMs, slots };
}

interface Lap {
  readonly part: ClassPart;
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
}

/** Where a lesson stands at an instant: computed from the times alone, so that a machine's sleep changes nothing. */
export function getClassMoment(times: ClassTimes, nowMs: EpochMs): ClassMoment {
  const laps = listLaps(times);
  const first = laps[0];
  if (!first) return { part: { kind: 'after' }, next: null, remainingMs: 0, remainingShare: 0 };
  if (nowMs < times.startMs) {
    return {
      part: { kind: 'before' },
      next: first.part,
      remainingMs: times.startMs - nowMs,
      remainingShare: 1,
    };
  }
  const at = laps.findIndex(({ toMs }) => nowMs < toMs);
  const lap = laps[at];
  if (!lap) return { part: { kind: 'after' }, next: null, remainingMs: 0, remainingShare: 0 };
  const remainingMs = lap.toMs - nowMs;
  return {
    part: lap.part,
    next: laps[at + 1]?.part ?? { kind: 'after' },
    remainingMs,
    remainingShare: remainingMs / (lap.toMs - lap.fromMs),
  };
}

function listLaps({ startMs, workMs, clearUpMs, endMs, slots }: ClassTimes): readonly Lap[] {
  const slotMs = (clearUpMs - workMs) / slots;
  const work = Array.from(
    { length: slots },
    (_, slot): Lap => ({
      part: { kind: 'slot', slot },
      fromMs: workMs + slot * slotMs,
      toMs: workMs + (slot + 1) * slotMs,
    }),
  );
  const laps: readonly Lap[] = [
    { part: { kind: 'warm-up' }, fromMs: startMs, toMs: workMs },
    ...work,
    { part: { kind: 'clear-up' }, fromMs: clearUpMs, toMs: endMs },
  ];
  return laps.filter(({ fromMs, toMs }) => toMs > fromMs);
}

/** One look at both clocks of a machine. */
export interface ClockLook {
  /** The wall clock. */
  readonly wallMs: EpochMs;
  /** A clock that only ever counts up, from any begin. */
  readonly steadyMs: number;
}

/** Difference of the two clocks' counts that is no jump: timers of a busy machine are late by less. */
const STEADY_WITHIN_MS = 2000;

/**
 * By how much the wall clock moved against the steady one between two looks; null where they agree. Some machines stop
 * the steady clock while they sleep, so this is either a clock that was set or a sleep.
 */
export function findClockJump(before: ClockLook, now: ClockLook): number | null {
  const jumpMs = now.wallMs - before.wallMs - (now.steadyMs - before.steadyMs);
  return Math.abs(jumpMs) > STEADY_WITHIN_MS ? jumpMs : null;
}
