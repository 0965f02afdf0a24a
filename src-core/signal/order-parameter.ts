/** How far a group of phases agree, and on which phase. */
export interface Agreement {
  /** Length of the mean of the unit vectors, 0 (cancel out) to 1 (all equal). */
  readonly length: number;
  /** Direction of that mean in radians, -π to π; 0 where the length is 0. */
  readonly phase: number;
}

/**
 * The order parameter of a group at one moment: R·exp(iψ) = (1/N) Σ exp(iθ), as Kuramoto defined it (T. D. Frank and
 * M. J. Richardson, "On a test statistic for the Kuramoto order parameter of synchronization", Physica D 239, 2010).
 * The same formula over a list of directions is the circular mean with its mean resultant length. Phases in radians,
 * any turn; each counts by its weight where weights are given (0 or more). Without phases, or without weight: 0.
 */
export function measureAgreement(phases: ArrayLike<number>, weights?: ArrayLike<number>): Agreement {
  let along = 0;
  let across = 0;
  let total = 0;
  for (let at = 0; at < phases.length; at++) {
    const weight = weights === undefined ? 1 : (weights[at] ?? 0);
    const phase = phases[at] ?? 0;
    along += weight * Math.cos(phase);
    across += weight * Math.sin(phase);
    total += weight;
  }
  if (total === 0) return { length: 0, phase: 0 };
  const length = Math.hypot(along, across) / total;
  return { length, phase: length === 0 ? 0 : Math.atan2(across, along) };
}

/**
 * Mean order parameter of N independent phases, each anywhere on the circle: [N] for N of 0 to 12.
 *
 * The sum of N random unit vectors is a plane random walk; its mean length is ∫₀^∞ (1 − J₀(t)^N)/t² dt, because
 * ∫₀^∞ (1 − J₀(at))/t² dt = a and the mean of J₀(t·length) over the walk is J₀(t)^N (J. C. Kluyver, 1905; the values
 * times N are in J. M. Borwein, D. Nuyens, A. Straub and J. Wan, "Some arithmetic properties of short random walk
 * integrals", Ramanujan Journal 26, 2011, table of W_n(1); from memory). A test integrates the formula again.
 */
const CHANCE = [
  1, 1, 0.63662, 0.524866, 0.449773, 0.401632, 0.365643, 0.338053, 0.315832, 0.297507, 0.282035, 0.268753,
  0.257186,
];

/**
 * The order parameter that a group of `count` would show on average if nobody heeded anybody: 0.637 for two, 0.450 for
 * four. From 13 on √(π/4N)·(1 + 1/16N), its limit for many with the first term beyond, which is right to 1e-5 there. 1
 * for one or none, who always agree.
 */
export function getChanceAgreement(count: number): number {
  return CHANCE[count] ?? Math.sqrt(Math.PI / (4 * count)) * (1 + 1 / (16 * count));
}

/**
 * An order parameter on a scale where chance is 0 and unison 1; below 0 where a group agrees less than chance, so that
 * many can be averaged. 0 for fewer than two.
 */
export function rescaleAgreement(length: number, count: number): number {
  if (count < 2) return 0;
  const chance = getChanceAgreement(count);
  return (length - chance) / (1 - chance);
}
