import type { PhaseMatch } from './phase-match.ts';

/** The course of a movement through a clip. */
export interface PhasePath {
  /** Phase in cycles at every frame, growing through a run; NaN at rest. A later run begins at a phase of 0 to 1 again. */
  readonly phases: Float64Array;
  /** What each frame gained; 0 at rest. */
  readonly gains: Float32Array;
}

/** What a path may do, and what it costs. */
export interface TrackRule {
  /** Cost of starting or stopping, in cycles' worth of full gain. */
  readonly changeCost: number;
  /** Cost of every frame that is not rest, so that a standstill before or after the movement is not taken for its turn. */
  readonly activeCost: number;
  /** Cost a frame of going at half or double the pace expected there, growing with the square of the octaves. */
  readonly paceCost: number;
}

/** Steps of phase that one bin of the template is cut into. */
const FINENESS = 2;
/** Slowest and fastest pace against the expected one. */
const SLOWEST = 0.5;
const FASTEST = 1.9;

interface Track {
  readonly steps: number;
  readonly from: Int16Array;
  best: Float64Array;
  next: Float64Array;
}

/**
 * Follows a movement through its cycles by dynamic programming, as beat trackers do: at each frame either a phase of the
 * cycle, moved on at about the expected pace, or rest. `expected` is the cycle length at each frame, in frames.
 */
export function findPhasePath(match: PhaseMatch, expected: Float64Array, rule: TrackRule): PhasePath {
  const steps = match.bins * FINENESS;
  const track: Track = {
    steps,
    from: new Int16Array(match.frameCount * (steps + 1)),
    best: new Float64Array(steps + 1),
    next: new Float64Array(steps + 1),
  };
  for (let frame = 0; frame < match.frameCount; frame++) {
    advance(track, { match, frame, cycle: expected[frame] as number }, rule);
    [track.best, track.next] = [track.next, track.best];
  }
  return traceBack(match, track, rule.changeCost * (expected[match.frameCount - 1] ?? 0));
}

interface Moment {
  readonly match: PhaseMatch;
  readonly frame: number;
  readonly cycle: number;
}

const FROM_REST = -1;

function advance(track: Track, moment: Moment, rule: TrackRule): void {
  const { steps, best, next, from } = track;
  const { match, frame, cycle } = moment;
  const first = frame * (steps + 1);
  const change = rule.changeCost * cycle;
  const rest = best[steps] as number;
  const start = rest - change;
  const moves = frame === 0 ? [] : listMoves(steps / cycle, rule);
  let stopAt = 0;
  for (let step = 0; step < steps; step++) {
    let reached = start;
    let origin = FROM_REST;
    for (const { taken, cost } of moves) {
      const value = (best[(step - taken + steps) % steps] as number) - cost;
      if (value <= reached) continue;
      reached = value;
      origin = taken;
    }
    from[first + step] = origin;
    next[step] = reached + readGain(match, frame, step) - rule.activeCost;
    if ((best[step] as number) > (best[stopAt] as number)) stopAt = step;
  }
  const stopped = (best[stopAt] as number) - change;
  const rests = frame === 0 || rest >= stopped;
  next[steps] = rests ? rest : stopped;
  from[first + steps] = rests ? FROM_REST : stopAt;
}

/** Steps of phase that one frame may take at a pace, each with its cost. */
function listMoves(pace: number, rule: TrackRule): { readonly taken: number; readonly cost: number }[] {
  const least = Math.max(1, Math.floor(pace * SLOWEST));
  const most = Math.max(least, Math.ceil(pace * FASTEST));
  return Array.from({ length: most - least + 1 }, (_, index) => ({
    taken: least + index,
    cost: costOfPace(least + index, pace, rule),
  }));
}

/** Half a step off costs nothing: phases are no finer than that. */
function costOfPace(taken: number, pace: number, rule: TrackRule): number {
  const off = Math.max(0, Math.abs(taken - pace) - 0.5);
  const octaves = Math.log2(1 + off / Math.min(taken, pace));
  return rule.paceCost * octaves * octaves;
}

function readGain(match: PhaseMatch, frame: number, step: number): number {
  const bin = Math.floor(step / FINENESS);
  const part = (step % FINENESS) / FINENESS;
  const here = match.gains[frame * match.bins + bin] as number;
  const after = match.gains[frame * match.bins + ((bin + 1) % match.bins)] as number;
  return here + part * (after - here);
}

function traceBack(match: PhaseMatch, { steps, from, best }: Track, lastChange: number): PhasePath {
  const { frameCount } = match;
  const phases = new Float64Array(frameCount).fill(Number.NaN);
  const gains = new Float32Array(frameCount);
  let state = steps;
  best[steps] = (best[steps] as number) + lastChange;
  for (let step = 0; step < steps; step++) if ((best[step] as number) > (best[state] as number)) state = step;
  let turns = 0;
  for (let frame = frameCount - 1; frame >= 0; frame--) {
    const origin = from[frame * (steps + 1) + state] as number;
    if (state === steps) {
      if (origin !== FROM_REST) state = origin;
      turns = 0;
      continue;
    }
    phases[frame] = state / steps - turns;
    gains[frame] = readGain(match, frame, state);
    if (origin === FROM_REST) {
      state = steps;
      turns = 0;
      continue;
    }
    const before = state - origin;
    turns += Math.ceil(Math.max(0, -before) / steps);
    state = ((before % steps) + steps) % steps;
  }
  return { phases, gains };
}
