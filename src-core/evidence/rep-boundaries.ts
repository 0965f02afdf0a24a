import type { Seconds } from '../platform/units.ts';
import type { CycleRun } from './cycle-runs.ts';

/** Where a run's cycles begin and end; one more than `count`, ascending, none outside the clip. */
export function placeBoundaries(run: CycleRun, count: number, durationSeconds: Seconds): Seconds[] {
  const offset = findOffset(run, run.cycles - count);
  const boundaries: Seconds[] = [];
  for (let index = 0; index <= count; index++) {
    const at = Math.min(durationSeconds, Math.max(0, run.secondsAt(offset + index)));
    boundaries.push(Math.max(at, boundaries.at(-1) ?? 0));
  }
  return boundaries;
}

/** Places that are tried, evenly spaced: a step is a sixteenth of a cycle at most. */
const TRIES = 9;

/**
 * How much of what is over after whole cycles lies before the first. It lies where the run was cut; between two like ends
 * cycles begin where the movement is slowest, which is where it turns, or in the middle where it is as slow all along.
 */
function findOffset({ startsAtRest, endsAtRest, energyAt }: CycleRun, surplus: number): number {
  if (startsAtRest !== endsAtRest) return startsAtRest ? 0 : surplus;
  const middle = surplus / 2;
  let best = middle;
  for (let at = 0; at < TRIES; at++) {
    const offset = (surplus * at) / (TRIES - 1);
    if (energyAt(offset) < energyAt(best)) best = offset;
  }
  return best;
}
