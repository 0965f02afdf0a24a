import type { Seconds } from '../platform/units.ts';
import type { FlowPlanes, MotionSeries } from './motion-series.ts';

/** Even steps into which a cycle is cut: fine enough for the fourth harmonic, coarse enough for 4 cycles a second. */
export const STEPS_PER_CYCLE = 24;

/** Cycles read before a run's first and after its last, so that performers ahead or behind are seen whole. */
export const MARGIN_CYCLES = 1;

/**
 * One run of cycles, its motion read at even steps of the cycle instead of even steps of time, so that a drifting
 * tempo stands still (computed order tracking; common practice for rotating machines).
 */
export interface SampledRun {
  /** Cycles of the run, those of the margin left out. */
  readonly cycles: number;
  /** Where steps begin and end: one more than there are steps; may lie outside the clip. */
  readonly edgesSeconds: Float64Array;
  /** Displacement during each step in pixels of the small frame, step after step, `columns × rows` cells each. */
  readonly u: Float32Array;
  readonly v: Float32Array;
}

/** Flow with the times of its frames: a motion series, or the fine part of one. */
type TimedFlow = FlowPlanes & Pick<MotionSeries, 'rateHz' | 'fromSeconds' | 'frameCount'>;

/**
 * Reads the motion of one run at `STEPS_PER_CYCLE` even steps a cycle, with `MARGIN_CYCLES` before and after; nothing
 * moves outside the clip. `boundariesSeconds` is where cycles begin and end, ascending, two at least.
 */
export function sampleRun(motion: TimedFlow, boundariesSeconds: readonly Seconds[]): SampledRun {
  const edgesSeconds = listEdges(boundariesSeconds);
  const steps = edgesSeconds.length - 1;
  const cells = motion.columns * motion.rows;
  const u = new Float32Array(steps * cells);
  const v = new Float32Array(steps * cells);
  for (let step = 0; step < steps; step++) {
    // Flow at frame i is what moved between frames i - 1 and i, so frame i covers (i - 1, i] in units of frames.
    const from = ((edgesSeconds[step] ?? 0) - motion.fromSeconds) * motion.rateHz;
    const to = ((edgesSeconds[step + 1] ?? 0) - motion.fromSeconds) * motion.rateHz;
    const last = Math.min(motion.frameCount - 1, Math.ceil(to));
    for (let frame = Math.max(1, Math.floor(from) + 1); frame <= last; frame++) {
      const share = Math.min(to, frame) - Math.max(from, frame - 1);
      for (let cell = 0; cell < cells; cell++) {
        const at = step * cells + cell;
        u[at] = (u[at] ?? 0) + share * (motion.u[frame * cells + cell] ?? 0);
        v[at] = (v[at] ?? 0) + share * (motion.v[frame * cells + cell] ?? 0);
      }
    }
  }
  return { cycles: boundariesSeconds.length - 1, edgesSeconds, u, v };
}

function listEdges(boundaries: readonly Seconds[]): Float64Array {
  const cycles = boundaries.length - 1;
  const first = boundaries[0] ?? 0;
  const last = boundaries[cycles] ?? 0;
  const firstLength = (boundaries[1] ?? 0) - first;
  const lastLength = last - (boundaries[cycles - 1] ?? 0);
  const steps = (cycles + 2 * MARGIN_CYCLES) * STEPS_PER_CYCLE;
  return Float64Array.from({ length: steps + 1 }, (_, step) => {
    const at = step / STEPS_PER_CYCLE - MARGIN_CYCLES;
    if (at < 0) return first + at * firstLength;
    if (at >= cycles) return last + (at - cycles) * lastLength;
    const from = boundaries[Math.floor(at)] ?? 0;
    const to = boundaries[Math.floor(at) + 1] ?? 0;
    return from + (at - Math.floor(at)) * (to - from);
  });
}
