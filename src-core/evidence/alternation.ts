import { measureAgreement } from '../signal/order-parameter.ts';

// Set with the other thresholds of unison on filmed groups (the bench's first 128 scenes of seed 1), by how all came out.

/** Order parameter above which a group has one common beat, whatever else its phases do. */
const COMMON_BEAT = 0.42;
/** How closely phases must keep to even distances: order parameter of the phases times the number of places. */
const EVENLY = 0.85;

/**
 * Whether a group moves by turns: half and half (antiphase), or in a round with one lane after the other. False where it
 * shares one beat or keeps no even distances. Phases in radians, one a lane.
 *
 * Phases at even distances fall together when multiplied by the number of places (the higher moments of circular
 * statistics). Antiphase is a pattern people hold on purpose, not poor unison: rowers held it in nine of nine pairs
 * (A. J. de Brouwer et al., "Rowing crew coordination and performance at the optimal stroke rate", 2013).
 */
export function isAlternating(phases: readonly number[]): boolean {
  if (phases.length < 2 || measureAgreement(phases).length > COMMON_BEAT) return false;
  return [2, phases.length].some(
    (places) => measureAgreement(phases.map((phase) => phase * places)).length >= EVENLY,
  );
}
