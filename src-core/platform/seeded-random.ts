/** A repeatable source of randomness: each call gives the next value, uniform in [0, 1). */
export type Random = () => number;

/**
 * The same sequence for the same seed, on every machine.
 *
 * Mulberry32 (Tommy Ettinger, public domain): 32 bits of state, good enough for films and examples, never for secrets.
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
