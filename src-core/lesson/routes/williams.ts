/**
 * The rows of a Williams design, stations as numbers from 0 (E. J. Williams, "Experimental designs balanced for the
 * estimation of residual effects of treatments", 1949; R package crossdes, help page `williams`). With an even
 * number of stations `square` alone lets every station follow every other exactly once. With an odd number it takes
 * `square` and `mirror` together, and each station follows each other twice; `mirror` is null for even numbers.
 */
export function buildWilliamsRows(size: number): {
  readonly square: readonly (readonly number[])[];
  readonly mirror: readonly (readonly number[])[] | null;
} {
  // 0, 1, n−1, 2, n−2, …: the steps between neighbours are all different.
  const first = Array.from({ length: size }, (_, slot) =>
    slot % 2 === 1 ? (slot + 1) / 2 : (size - slot / 2) % size,
  );
  const square = first.map((_, shift) => first.map((station) => (station + shift) % size));
  const isEven = size % 2 === 0;
  return { square, mirror: isEven ? null : square.map((row) => row.toReversed()).toReversed() };
}
