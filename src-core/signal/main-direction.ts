import type { FlowVectors } from './flow-vectors.ts';
import type { PhaseTemplate } from './phase-template.ts';

const ROUNDS = 12;

/**
 * The one direction, among all cells' flows, that a movement varies along most (power iteration over its template), of
 * length 1; the side on which more cells go up is positive.
 */
export function findMainDirection({ bins, size, means }: PhaseTemplate): Float32Array {
  let direction = means.slice(0, size).fill(1);
  for (let round = 0; round < ROUNDS; round++) {
    const next = new Float32Array(size);
    for (let bin = 0; bin < bins; bin++) {
      let along = 0;
      for (let at = 0; at < size; at++)
        along += (means[bin * size + at] as number) * (direction[at] as number);
      for (let at = 0; at < size; at++)
        next[at] = (next[at] as number) + along * (means[bin * size + at] as number);
    }
    direction = scaleToOne(next);
  }
  let down = 0;
  for (let at = 1; at < size; at += 2) down += direction[at] as number;
  return down > 0 ? direction.map((value) => -value) : direction;
}

function scaleToOne(vector: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer> {
  const length = Math.hypot(...vector);
  return length > 1e-12 ? vector.map((value) => value / length) : vector.fill(0);
}

/** Every frame's part along a direction, scaled so that the largest is 1 either way. */
export function projectFrames(
  { values, size, frameCount }: FlowVectors,
  direction: Float32Array,
): Float32Array {
  const line = new Float32Array(frameCount);
  let most = 1e-12;
  for (let frame = 0; frame < frameCount; frame++) {
    let along = 0;
    for (let at = 0; at < size; at++)
      along += (values[frame * size + at] as number) * (direction[at] as number);
    line[frame] = along;
    most = Math.max(most, Math.abs(along));
  }
  return line.map((value) => value / most);
}
