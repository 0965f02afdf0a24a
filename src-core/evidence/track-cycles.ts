import type { FlowBand } from '../signal/flow-band.ts';
import { buildFlowBand } from '../signal/flow-band.ts';
import type { FlowVectors } from '../signal/flow-vectors.ts';
import type { PhaseMatch } from '../signal/phase-match.ts';
import { matchPhases } from '../signal/phase-match.ts';
import type { PhasePath } from '../signal/phase-path.ts';
import { findPhasePath } from '../signal/phase-path.ts';
import { buildPhaseTemplate } from '../signal/phase-template.ts';
import type { RepsRule } from './reps-rule.ts';

/** A movement followed through a clip. */
export interface CycleTrack {
  /** Every how many frames of the motion series the track has a value. */
  readonly stride: number;
  /** Seconds between them. */
  readonly frameSeconds: number;
  /** Shortest cycle, in frames of the motion series, of the band that it was followed in; see `signal/flow-band.ts`. */
  readonly shortest: number;
  readonly path: PhasePath;
  /** What the path was found in. */
  readonly match: PhaseMatch;
  /** Score of the cycle length at every frame of the track; see `signal/lag-scores.ts`. */
  readonly scores: Float32Array;
}

/** Cycles that the first idea of the movement is taken from. */
const FIRST_CYCLES = 4;
const ROUNDS = 3;

/**
 * Follows the movement whose cycle length `lagAt` gives (in frames, one a frame) and which is under way where `scoreAt`
 * is high: a template is averaged over the steadiest few cycles, followed through the clip, and averaged anew.
 */
export function trackCycles(
  vectors: FlowVectors,
  lagAt: Float64Array,
  scoreAt: Float32Array,
  rule: RepsRule,
): CycleTrack {
  const middle = findMedianLag(lagAt, scoreAt, rule.path.floor);
  const shortest = middle / Math.SQRT2;
  const band = buildFlowBand(vectors, shortest);
  const { stride } = band;
  const expected = Float64Array.from(
    { length: band.frameCount },
    (_, frame) => (lagAt[frame * stride] as number) / stride,
  );
  const bins = Math.min(32, Math.max(8, Math.round((2 * middle) / stride)));
  const scores = Float32Array.from(
    { length: band.frameCount },
    (_, frame) => scoreAt[frame * stride] as number,
  );
  let phases = layFirstPhases(band, expected, scoreAt);
  for (let round = 1; ; round++) {
    const template = buildPhaseTemplate(band, phases, bins);
    const match = matchPhases(band, template, phases, rule.match);
    const path = findPhasePath(match, expected, rule.track);
    phases = path.phases;
    if (round < ROUNDS) continue;
    return { stride, frameSeconds: 1 / band.rateHz, shortest, path, match, scores };
  }
}

function findMedianLag(lagAt: Float64Array, scoreAt: Float32Array, floor: number): number {
  const lags = lagAt.filter((_, frame) => (scoreAt[frame] as number) > floor).sort();
  return lags[lags.length >> 1] ?? lagAt[0] ?? 1;
}

/** Phases of the steadiest few cycles, by the expected pace; NaN elsewhere. */
function layFirstPhases(band: FlowBand, expected: Float64Array, scoreAt: Float32Array): Float64Array {
  const { frameCount, stride } = band;
  const phases = new Float64Array(frameCount).fill(Number.NaN);
  const score = (frame: number) => scoreAt[frame * stride] as number;
  let width = 0;
  for (let frame = 0, done = 0; frame < frameCount && done < FIRST_CYCLES; frame++) {
    done += 1 / (expected[frame] as number);
    width = frame + 1;
  }
  let sum = 0;
  let best = Number.NEGATIVE_INFINITY;
  let bestEnd = width;
  for (let frame = 0; frame < frameCount; frame++) {
    sum += score(frame) - (frame >= width ? score(frame - width) : 0);
    if (frame + 1 >= width && sum > best) {
      best = sum;
      bestEnd = frame + 1;
    }
  }
  let phase = 0;
  for (let frame = bestEnd - width; frame < bestEnd; frame++) {
    phases[frame] = phase;
    phase += 1 / (expected[frame] as number);
  }
  return phases;
}
