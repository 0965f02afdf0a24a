import type { Seconds } from '../platform/units.ts';
import type { CycleRun } from './cycle-runs.ts';
import { layReps, placeReps } from './lay-reps.ts';
import type { CountingRule, RepRun } from './reps-finding.ts';
import type { RepsRule } from './reps-rule.ts';
import type { CycleTrack } from './track-cycles.ts';

/** A rep of a run. */
interface CountedRep {
  /** When it is done. */
  readonly at: Seconds;
  /** Trust in it, 0 to 1. */
  readonly confidence: number;
}

/** A run with its reps laid out. */
export interface CountedRun extends RepRun {
  readonly reps: readonly CountedRep[];
  /** See `lay-reps.ts`. */
  readonly clearness: number;
}

/** Lays reps into each run; runs that hold no whole cycle are left out. */
export function countRuns(
  track: CycleTrack,
  runs: readonly CycleRun[],
  clip: { readonly durationSeconds: Seconds; readonly counting: CountingRule; readonly rule: RepsRule },
): CountedRun[] {
  return runs.flatMap((run) => {
    const cycleSeconds = ((run.last - run.first + 1) * track.frameSeconds) / run.cycles;
    const laid = layReps(run, cycleSeconds, clip);
    if (laid.count * laid.step < 1) return [];
    const marks = placeReps(run, laid, clip.durationSeconds);
    const boundariesSeconds = marks.filter((_, index) => Number.isInteger(index * laid.step));
    const reps = measureStretches(track, marks);
    const confidences = measureStretches(track, boundariesSeconds).map(({ confidence }) => confidence);
    return [{ boundariesSeconds, confidences, reps, clearness: laid.clearness }];
  });
}

/** The stretches between marks: where each ends, and the share of its energy that the movement explains. */
function measureStretches(
  { path, match, frameSeconds }: CycleTrack,
  marks: readonly Seconds[],
): CountedRep[] {
  return marks.slice(1).map((at, index) => {
    let gained = 0;
    let energy = 0;
    const last = Math.min(path.gains.length - 1, Math.round(at / frameSeconds));
    for (let frame = Math.round((marks[index] ?? 0) / frameSeconds); frame <= last; frame++) {
      gained += path.gains[frame] as number;
      energy += match.energies[frame] as number;
    }
    return { at, confidence: energy > 0 ? Math.min(1, Math.max(0, gained / energy)) : 0 };
  });
}
