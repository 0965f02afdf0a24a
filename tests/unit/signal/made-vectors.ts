import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import type { FlowVectors } from '../../../src-core/signal/flow-vectors.ts';

/** Frames of eight numbers a piece, given by a function of time, with noise. */
export function makeVectors(
  seconds: number,
  at: (second: number, place: number) => number,
  noise = 0.1,
): FlowVectors {
  const rateHz = 15;
  const size = 8;
  const frameCount = Math.round(seconds * rateHz);
  const random = seededRandom(3);
  const values = Float32Array.from(
    { length: frameCount * size },
    (_, index) =>
      at(Math.floor(index / size) / rateHz, index % size) +
      noise * 2 * (random() + random() + random() - 1.5),
  );
  return { rateHz, frameCount, size, values };
}
