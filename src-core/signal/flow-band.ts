import type { FlowVectors } from './flow-vectors.ts';

/** Share of the band's shortest cycle that its frames are smoothed over (standard deviation). */
const SMOOTHING_SHARE = 0.05;
/** Frames that are left of the band's shortest cycle at least, when frames are thinned out. */
const FRAMES_PER_CYCLE = 16;

/** Flow vectors fit for looking at cycles of one octave of length, with every how many frames one was kept. */
export interface FlowBand extends FlowVectors {
  readonly stride: number;
}

/**
 * Keeps of the flow what can belong to cycles of `shortest` to `2 × shortest` frames: smoothed in proportion, thinned
 * out, and without what stays the same over two of the longest cycles (a slow pan, somebody walking past).
 */
export function buildFlowBand(vectors: FlowVectors, shortest: number): FlowBand {
  const { size, frameCount, rateHz } = vectors;
  const stride = Math.max(1, Math.floor(shortest / FRAMES_PER_CYCLE));
  const kernel = buildKernel(Math.max(0.7, SMOOTHING_SHARE * shortest));
  const count = Math.ceil(frameCount / stride);
  const values = new Float32Array(count * size);
  for (let frame = 0; frame < count; frame++)
    smoothFrame(vectors, kernel, frame * stride, values.subarray(frame * size, (frame + 1) * size));
  removeMean(values, size, Math.round((4 * shortest) / stride));
  return { rateHz: rateHz / stride, frameCount: count, size, values, stride };
}

function buildKernel(deviation: number): Float64Array {
  const reach = Math.ceil(2.5 * deviation);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, index) =>
    Math.exp(-0.5 * ((index - reach) / deviation) ** 2),
  );
  const sum = kernel.reduce((total, weight) => total + weight, 0);
  return kernel.map((weight) => weight / sum);
}

function smoothFrame(
  { values, size, frameCount }: FlowVectors,
  kernel: Float64Array,
  frame: number,
  to: Float32Array,
): void {
  const reach = (kernel.length - 1) / 2;
  for (let index = 0; index < kernel.length; index++) {
    const from = Math.min(frameCount - 1, Math.max(0, frame + index - reach)) * size;
    const weight = kernel[index] as number;
    for (let at = 0; at < size; at++) to[at] = (to[at] as number) + weight * (values[from + at] as number);
  }
}

/** Takes a moving mean over `width` frames off every number; at the ends over as many as there are. In place. */
function removeMean(values: Float32Array, size: number, width: number): void {
  const count = values.length / size;
  const half = Math.max(1, width >> 1);
  const running = new Float64Array(count + 1);
  for (let at = 0; at < size; at++) {
    for (let frame = 0; frame < count; frame++)
      running[frame + 1] = (running[frame] as number) + (values[frame * size + at] as number);
    for (let frame = 0; frame < count; frame++) {
      const from = Math.max(0, frame - half);
      const to = Math.min(count, frame + half);
      values[frame * size + at] =
        (values[frame * size + at] as number) -
        ((running[to] as number) - (running[from] as number)) / (to - from);
    }
  }
}
