import type { MotionSeries } from '../signal/motion-series.ts';
import type { CountedRun } from './count-runs.ts';
import { countRuns } from './count-runs.ts';
import type { CountingRule, RepRun, RepsFinding, RepsOptions } from './reps-finding.ts';
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
  const counted = study ? countRuns(study.track, study.runs, { durationSeconds, rule }) : [];
  const runs = counted.map((run) => ({
    ...run,
    boundariesSeconds: run.boundariesSeconds.map((at) => at + motion.fromSeconds),
  }));
  const cycles = runs.reduce((sum, { confidences }) => sum + confidences.length, 0);
  if (!study || study.standing < 1 || cycles === 0) return denyReps(motion, study);
  return describeReps(motion, study, { runs, counting: options.counting });
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

function describeReps(
  motion: MotionSeries,
  study: RepsStudy,
  { runs, counting }: { readonly runs: readonly CountedRun[]; readonly counting: CountingRule },
): RepsFinding {
  const lengths = runs.flatMap(({ boundariesSeconds: at }) =>
    at.slice(1).map((to, index) => to - (at[index] ?? 0)),
  );
  const clearness = Math.min(...runs.map((run) => run.clearness));
  const times = runs.flatMap((run) => listRepEnds(run, counting));
  return {
    count: times.length,
    confidence: (1 - Math.exp(-TRUST_RATE * study.trust)) * (0.7 + 0.3 * clearness),
    timesSeconds: times.map(({ at }) => at),
    repConfidences: times.map(({ confidence }) => confidence),
    cycleSeconds: lengths.sort((one, other) => one - other)[lengths.length >> 1] ?? null,
    spanSeconds: [runs[0]?.boundariesSeconds[0] ?? 0, runs.at(-1)?.boundariesSeconds.at(-1) ?? 0],
    runs: runs.map(({ boundariesSeconds, confidences }) => ({ boundariesSeconds, confidences })),
    trace: buildRepsTrace(motion, study, runs),
  };
}

/** Where each rep ends; by sides, one rep is over in the middle of a cycle. */
function listRepEnds(
  { boundariesSeconds, confidences }: RepRun,
  counting: CountingRule,
): { readonly at: number; readonly confidence: number }[] {
  return confidences.flatMap((confidence, index) => {
    const from = boundariesSeconds[index] ?? 0;
    const to = boundariesSeconds[index + 1] ?? from;
    const ends = counting === 'side' ? [(from + to) / 2, to] : [to];
    return ends.map((at) => ({ at, confidence }));
  });
}
