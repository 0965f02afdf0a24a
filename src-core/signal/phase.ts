/** A difference of phases brought to the nearest turn: radians, -π to π. */
export function wrapPhase(phase: number): number {
  return phase - 2 * Math.PI * Math.round(phase / (2 * Math.PI));
}

/**
 * Lag that belongs to a phase at a cycle length: a phase below the other's is a lag behind it (positive seconds), as
 * φ = 360°·f·lag; within half a cycle either way.
 */
export function findLagSeconds(phase: number, cycleSeconds: number): number {
  // `0 -` keeps a phase of 0 from becoming a lag of minus 0.
  return 0 - (wrapPhase(phase) * cycleSeconds) / (2 * Math.PI);
}
