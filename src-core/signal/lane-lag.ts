import { STEPS_PER_CYCLE } from './cycle-samples.ts';
import type { LaneFlow } from './lane-signal.ts';

/** A stretch of a run, in steps from the beginning of its margin. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where in the group's cycle a stretch of a lane fits best. */
export interface LaneLag {
  /** Steps by which the lane is behind, fractions allowed, half a cycle either way; negative is ahead. */
  readonly steps: number;
  /** How much of the cycle the stretch holds there: 1 as much as the cycle itself, 0 or less nothing of it. */
  readonly match: number;
}

/** What it costs a lane to be elsewhere in the cycle, as a share of its best match; set on rendered groups. */
const COST = {
  /** Half a cycle from the stretch before: a performer with an own tempo drifts and does not jump. */
  jump: 0.5,
  /** Half a cycle from the group: of two places that fit alike (left and right hand) the nearer is meant. */
  away: 0.1,
} as const;

const HALF = STEPS_PER_CYCLE / 2;

/**
 * The lags of a lane in stretches of a run that follow each other: the best path through the cross-correlation of its
 * flow with a cycle that repeats for ever, by dynamic programming. Both parts of the flow are taken together, so that
 * harmonics count and a movement to the left never fits one to the right. A stretch is read later by as much as it is
 * held to be behind, so that a late performer's first cycle is seen whole.
 */
export function followLag(flow: LaneFlow, cycle: LaneFlow, stretches: readonly Stretch[]): LaneLag[] {
  const square = correlate(cycle, cycle, { from: 0, to: STEPS_PER_CYCLE });
  const matches = stretches.map(({ from, to }) =>
    Float64Array.from({ length: STEPS_PER_CYCLE }, (_, place) => {
      const whole = (square * (to - from)) / STEPS_PER_CYCLE;
      return whole > 0 ? correlate(flow, cycle, { from, to }, place - HALF) / whole : 0;
    }),
  );
  const path = findPath(matches);
  return matches.map((match, at) => refinePeak(match, path[at] ?? HALF));
}

function correlate(flow: LaneFlow, cycle: LaneFlow, { from, to }: Stretch, behind = 0): number {
  let sum = 0;
  for (let step = from; step < to; step++) {
    const turn = step % STEPS_PER_CYCLE;
    sum += (flow.u[step + behind] ?? 0) * (cycle.u[turn] ?? 0);
    sum += (flow.v[step + behind] ?? 0) * (cycle.v[turn] ?? 0);
  }
  return sum;
}

/** The place that each stretch has on the best path: `HALF` is level with the cycle, 0 half a cycle ahead. */
function findPath(matches: readonly Float64Array[]): number[] {
  const most = matches.reduce((best, match) => Math.max(best, ...match), 0);
  const weigh = (steps: number) => (most * (1 - Math.cos((2 * Math.PI * steps) / STEPS_PER_CYCLE))) / 2;
  let worths = new Float64Array(STEPS_PER_CYCLE);
  const origins = matches.map((match, index) => {
    const before = worths;
    const jump = index === 0 ? 0 : COST.jump;
    const best = Array.from(match, (_, place) =>
      findHighest(before.map((worth, origin) => worth - jump * weigh(place - origin))),
    );
    worths = match.map((value, place) => {
      const origin = best[place] ?? place;
      return value - COST.away * weigh(place - HALF) + (before[origin] ?? 0) - jump * weigh(place - origin);
    });
    return best;
  });
  const path: number[] = [];
  let place = findHighest(worths);
  for (const best of origins.reverse()) {
    path.unshift(place);
    place = best[place] ?? place;
  }
  return path;
}

function findHighest(values: Float64Array): number {
  return values.reduce((best, value, at) => (value > (values[best] ?? 0) ? at : best), 0);
}

/** The top of the hill that a place lies on, between steps that of a parabola. */
function refinePeak(match: Float64Array, place: number): LaneLag {
  const at = (where: number) => match[(where + 2 * STEPS_PER_CYCLE) % STEPS_PER_CYCLE] ?? 0;
  const uphill = at(place + 1) > at(place - 1) ? 1 : -1;
  let top = place;
  while (at(top + uphill) > at(top)) top += uphill;
  const bend = at(top - 1) - 2 * at(top) + at(top + 1);
  const between = bend < 0 ? (at(top - 1) - at(top + 1)) / (2 * bend) : 0;
  return { steps: top - HALF + between, match: at(top) };
}
