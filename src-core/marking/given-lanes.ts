import type { GivenLanes } from '../evidence/unison-finding.ts';

/** Performers that can be told apart side by side. */
export const MOST_LANES = 6;

/** How many performers there are in the teacher's word. */
export function countGivenLanes(given: GivenLanes): number {
  return typeof given === 'number' ? given : given.length;
}
