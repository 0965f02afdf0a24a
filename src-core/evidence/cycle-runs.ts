import type { Seconds } from '../platform/units.ts';
import type { RepsRule } from './reps-rule.ts';
import type { CycleTrack } from './track-cycles.ts';

/** A stretch of the movement without a break, on the track's own frames. */
export interface CycleRun {
  readonly first: number;
  readonly last: number;
  /** Cycles gone through, fractions allowed: parts of a cycle count by how much of its movement they hold. */
  readonly cycles: number;
  /** Share of the frames' energy that the movement explains. */
  readonly explained: number;
  /** Mean score of the cycle length over the run; see `signal/lag-scores.ts`. */
  readonly score: number;
  /** Whether the run begins or ends at rest within the clip; false where the clip itself begins or ends. */
  readonly startsAtRest: boolean;
  readonly endsAtRest: boolean;
  /** Energy of the mean cycle where so many cycles of the run are done: least where the movement turns. */
  readonly energyAt: (cycles: number) => number;
  /** When so many cycles of the run are done, in seconds of the clip; beyond its ends at its mean pace. */
  readonly secondsAt: (cycles: number) => Seconds;
}

/** The stretches of a track that are worth the name. */
export function listCycleRuns(track: CycleTrack, rule: RepsRule): CycleRun[] {
  const { phases } = track.path;
  const shares = shareOut(track.match.lengths);
  const runs: CycleRun[] = [];
  let first = -1;
  for (let frame = 0; frame <= phases.length; frame++) {
    const phase = phases[frame] ?? Number.NaN;
    const goesOn = !Number.isNaN(phase) && first >= 0 && phase >= (phases[frame - 1] ?? Number.NaN);
    if (first >= 0 && !goesOn) {
      runs.push(measureRun(track, shares, ...trimRun(track, rule, first, frame - 1)));
      first = -1;
    }
    if (first < 0 && !Number.isNaN(phase)) first = frame;
  }
  return runs.filter(({ cycles, explained }) => cycles >= 0.5 && explained >= rule.leastExplained);
}

/**
 * A run that begins or ends at rest within the clip may have taken the way into the first position for a part of a cycle:
 * frames within a cycle of its ends go as long as they gain nothing against the movement at full size.
 */
function trimRun(
  track: CycleTrack,
  rule: RepsRule,
  first: number,
  last: number,
): [first: number, last: number] {
  const { startsAtRest, endsAtRest } = findEnds(track.path.phases, first, last);
  return [
    startsAtRest ? findTrim(track, rule, first, last) : first,
    endsAtRest ? findTrim(track, rule, last, first) : last,
  ];
}

/** The frame, within a cycle of `end` on the way to `other`, before which the gains at full size add up to least. */
function findTrim({ path, match }: CycleTrack, rule: RepsRule, end: number, other: number): number {
  const { phases, gains } = path;
  const step = other >= end ? 1 : -1;
  let best = end;
  let least = 0;
  let sum = 0;
  for (let frame = end; frame !== other; frame += step) {
    const phase = phases[frame] as number;
    if (Math.abs(phase - (phases[end] as number)) > 1) break;
    const bin = Math.floor((phase - Math.floor(phase)) * match.bins) % match.bins;
    sum +=
      (gains[frame] as number) - (1 - rule.match.sizeShare) * (match.lengths[bin] as number) - rule.fullCost;
    if (sum < least) {
      least = sum;
      best = frame + step;
    }
  }
  return best;
}

/** A run may begin or end this near to the clip's own ends, in cycles, and still be taken as cut by them. */
const EDGE_CYCLES = 0.1;

function findEnds(
  phases: Float64Array,
  first: number,
  last: number,
): { startsAtRest: boolean; endsAtRest: boolean } {
  const cycle = (last - first) / Math.max(1e-6, (phases[last] as number) - (phases[first] as number));
  const edge = Math.max(1, EDGE_CYCLES * cycle);
  return { startsAtRest: first > edge, endsAtRest: last < phases.length - 1 - edge };
}

/** How much of a cycle's movement lies before each bin: from 0 to 1, one number more than there are bins. */
function shareOut(lengths: Float64Array): Float64Array {
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const shares = new Float64Array(lengths.length + 1);
  for (let bin = 0; bin < lengths.length; bin++) {
    // A bin stands for what lies around it; a little for each, so that a long hold is not nothing.
    const share = 0.9 * ((lengths[bin] as number) / (total + 1e-12)) + 0.1 / lengths.length;
    shares[bin + 1] = (shares[bin] as number) + share;
  }
  return shares;
}

function warp(phase: number, shares: Float64Array): number {
  const bins = shares.length - 1;
  const whole = Math.floor(phase + 0.5 / bins);
  const place = Math.min(bins - 1e-9, Math.max(0, (phase + 0.5 / bins - whole) * bins));
  const bin = Math.floor(place);
  const before = shares[bin] as number;
  return whole + before + (place - bin) * ((shares[bin + 1] as number) - before);
}

/** The bin that a warped phase lies in. */
function findBin(warped: number, shares: Float64Array): number {
  const share = warped - Math.floor(warped);
  const next = shares.findIndex((before) => before > share);
  return next < 0 ? shares.length - 2 : Math.max(0, next - 1);
}

function measureRun(track: CycleTrack, shares: Float64Array, first: number, last: number): CycleRun {
  const { phases, gains } = track.path;
  let gained = 0;
  let energy = 0;
  let score = 0;
  for (let frame = first; frame <= last; frame++) {
    gained += gains[frame] as number;
    energy += track.match.energies[frame] as number;
    score += track.scores[frame] as number;
  }
  const from = phases[first] as number;
  const to = phases[last] as number;
  // The first and the last frame stand for half a step more each.
  const half = last > first ? (0.5 * (to - from)) / (last - first) : 0;
  const begin = warp(from - half, shares);
  return {
    first,
    last,
    cycles: warp(to + half, shares) - begin,
    energyAt: (cycles) => track.match.lengths[findBin(begin + cycles, shares)] ?? 0,
    secondsAt: buildClock(track, shares, first, last),
    explained: energy > 0 ? gained / energy : 0,
    score: score / Math.max(1, last - first + 1),
    ...findEnds(phases, first, last),
  };
}

/** The inverse of a run's progress: seconds at which so many cycles are done. */
function buildClock(
  { path, frameSeconds }: CycleTrack,
  shares: Float64Array,
  first: number,
  last: number,
): (cycles: number) => Seconds {
  const half =
    (0.5 * ((path.phases[last] as number) - (path.phases[first] as number))) / Math.max(1, last - first);
  const begin = warp((path.phases[first] as number) - half, shares);
  const done = Float64Array.from(
    { length: last - first + 1 },
    (_, index) => warp(path.phases[first + index] as number, shares) - begin,
  );
  const all = done.at(-1) ?? 0;
  const pace = (last - first) / Math.max(1e-6, all - (done[0] as number));
  return (cycles) => {
    const next = done.findIndex((value) => value >= cycles);
    if (next < 0) return (last + (cycles - all) * pace) * frameSeconds;
    const after = done[next] as number;
    if (next === 0) return (first - (after - cycles) * pace) * frameSeconds;
    const before = done[next - 1] as number;
    return (first + next - (after - cycles) / Math.max(1e-9, after - before)) * frameSeconds;
  };
}
