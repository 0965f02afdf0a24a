import type { MotionSeries } from '../signal/motion-series.ts';
import type { CountedRun } from './count-runs.ts';
import { countRuns } from './count-runs.ts';
import type { RepsFinding, RepsOptions } from './reps-finding.ts';
import type { RepsRule } from './reps-rule.ts';
import { REPS_RULE } from './reps-rule.ts';
import { buildRepsTrace } from './reps-trace.ts';
import type { RepsStudy } from './study-reps.ts';
import { studyReps } from './study-reps.ts';

/**
 * Counts the reps of a clip from its motion alone; see {@link RepsFinding}. The prescribed number is no input, so that it
 * cannot pull the count its way.
 */
export function findReps(
  motion: MotionSeries,
  options: RepsOptions,
  rule: RepsRule = REPS_RULE,
): RepsFinding {
  const study = studyReps(motion, options, rule);
  const durationSeconds = motion.frameCount / motion.rateHz;
  const counted = study
    ? countRuns(study.track, study.runs, { durationSeconds, counting: options.counting, rule })
    : [];
  const runs = counted.map((run) => ({
    ...run,
    boundariesSeconds: run.boundariesSeconds.map((at) => at + motion.fromSeconds),
    reps: run.reps.map((rep) => ({ ...rep, at: rep.at + motion.fromSeconds })),
  }));
  if (!study || study.standing < 1 || runs.length === 0) return denyReps(motion, study);
  return describeReps(motion, study, runs);
}

function denyReps(motion: MotionSeries, study: RepsStudy | null): RepsFinding {
  return {
    count: null,
    confidence: 1 - 0.5 * Math.min(1, study?.standing ?? 0),
    timesSeconds: [],
    repConfidences: [],
    cycleSeconds: null,
    spanSeconds: null,
    runs: [],
    trace: buildRepsTrace(motion, study, []),
  };
}

/** From trust to confidence: 0.4 where it is just enough, 0.9 where a clip repeats itself plainly. */
const TRUST_RATE = 1;

function describeReps(motion: MotionSeries, study: RepsStudy, runs: readonly CountedRun[]): RepsFinding {
  const lengths = runs.flatMap(({ boundariesSeconds: at }) =>
    at.slice(1).map((to, index) => to - (at[index] ?? 0)),
  );
  const clearness = Math.min(...runs.map((run) => run.clearness));
  const reps = runs.flatMap((run) => run.reps);
  return {
    count: reps.length,
    confidence: (1 - Math.exp(-TRUST_RATE * study.trust)) * (0.7 + 0.3 * clearness),
    timesSeconds: reps.map(({ at }) => at),
    repConfidences: reps.map(({ confidence }) => confidence),
    cycleSeconds: lengths.sort((one, other) => one - other)[lengths.length >> 1] ?? null,
    spanSeconds: [runs[0]?.boundariesSeconds[0] ?? 0, reps.at(-1)?.at ?? 0],
    runs: runs.map(({ boundariesSeconds, confidences }) => ({ boundariesSeconds, confidences })),
    trace: buildRepsTrace(motion, study, runs),
  };
}
