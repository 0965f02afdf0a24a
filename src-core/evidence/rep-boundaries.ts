import type { Seconds } from '../platform/units.ts';
import type { CycleRun } from './cycle-runs.ts';

/** Where a run's cycles begin and end; one more than `count`, ascending, none outside the clip. */
export function placeBoundaries(run: CycleRun, count: number, durationSeconds: Seconds): Seconds[] {
  const surplus = run.cycles - count;
  const offset = surplus * getLeadShare(run);
  const boundaries: Seconds[] = [];
  for (let index = 0; index <= count; index++) {
    const at = Math.min(durationSeconds, Math.max(0, run.secondsAt(offset + index)));
    boundaries.push(Math.max(at, boundaries.at(-1) ?? 0));
  }
  return boundaries;
}

/** What is over after whole cycles lies where the run was cut; between two like ends it is halved. */
function getLeadShare({ startsAtRest, endsAtRest }: CycleRun): number {
  if (startsAtRest === endsAtRest) return 0.5;
  return startsAtRest ? 0 : 1;
}
