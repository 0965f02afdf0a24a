import type { Seconds } from '../platform/units.ts';
import type { CycleRun } from './cycle-runs.ts';
import { placeBoundaries } from './rep-boundaries.ts';
import type { RepRun } from './reps-finding.ts';
import type { RepsRule } from './reps-rule.ts';
import type { CycleTrack } from './track-cycles.ts';

/** A run with its whole cycles laid out. */
export interface CountedRun extends RepRun {
  /** How near what was seen lies to a whole number of cycles: 1 on it, 0 half a cycle or more off. */
  readonly clearness: number;
}

/** Lays whole cycles into each run, one that the clip cuts off being whole from its half on; runs that hold none are left out. */
export function countRuns(
  track: CycleTrack,
  runs: readonly CycleRun[],
  clip: { readonly durationSeconds: Seconds; readonly rule: RepsRule },
): CountedRun[] {
  return runs.flatMap((run) => {
    const count = Math.round(run.cycles - measureApproach(track, run, clip.rule));
    if (count < 1) return [];
    const boundariesSeconds = placeBoundaries(run, count, clip.durationSeconds);
    const confidences = boundariesSeconds
      .slice(1)
      .map((to, index) => measureConfidence(track, boundariesSeconds[index] ?? 0, to));
    return [{ boundariesSeconds, confidences, clearness: Math.max(0, 1 - 2 * Math.abs(run.cycles - count)) }];
  });
}

/**
 * Part of a cycle that a start from rest and a stop may add without being a rep: it takes its time, so that cycles of less
 * than a second hide less of it.
 */
function measureApproach({ frameSeconds }: CycleTrack, run: CycleRun, rule: RepsRule): number {
  const cycleSeconds = ((run.last - run.first + 1) * frameSeconds) / run.cycles;
  const ends = Number(run.startsAtRest) + Number(run.endsAtRest);
  return rule.approach * ends * Math.min(1, cycleSeconds);
}

/** Share of a cycle's energy that the movement explains. */
function measureConfidence({ path, match, frameSeconds }: CycleTrack, from: Seconds, to: Seconds): number {
  let gained = 0;
  let energy = 0;
  const last = Math.min(path.gains.length - 1, Math.round(to / frameSeconds));
  for (let frame = Math.round(from / frameSeconds); frame <= last; frame++) {
    gained += path.gains[frame] as number;
    energy += match.energies[frame] as number;
  }
  return energy > 0 ? Math.min(1, Math.max(0, gained / energy)) : 0;
}
