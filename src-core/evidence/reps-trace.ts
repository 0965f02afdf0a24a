import type { MotionSeries } from '../signal/motion-series.ts';
import type { RepRun, RepsTrace } from './reps-finding.ts';
import type { RepsStudy } from './study-reps.ts';

/** What is drawn below a clip: the movement as a line, its cycles' lengths, and how well they agree. */
export function buildRepsTrace(
  { rateHz, fromSeconds, frameCount }: MotionSeries,
  study: Pick<RepsStudy, 'track' | 'signal'> | null,
  runs: readonly RepRun[],
): RepsTrace {
  const first = Math.round(fromSeconds * rateHz);
  const strength = new Float32Array(first + frameCount);
  const signal = new Float32Array(first + frameCount);
  for (let frame = 0; frame < frameCount && study; frame++) {
    const place = frame / study.track.stride;
    const at = Math.floor(place);
    strength[first + frame] = Math.min(1, Math.max(0, study.track.scores[at] ?? 0));
    const here = study.signal[at] ?? 0;
    signal[first + frame] = here + (place - at) * ((study.signal[at + 1] ?? here) - here);
  }
  return { rateHz, cycleSecondsAt: layCycles(runs, rateHz, first + frameCount), strength, signal };
}

function layCycles(runs: readonly RepRun[], rateHz: number, frameCount: number): Float32Array {
  const lengths = new Float32Array(frameCount);
  for (const { boundariesSeconds } of runs) {
    for (const [index, to] of boundariesSeconds.entries()) {
      const from = boundariesSeconds[index - 1];
      if (from !== undefined) lengths.fill(to - from, Math.round(from * rateHz), Math.round(to * rateHz));
    }
  }
  return lengths;
}
