import { createHash } from 'node:crypto';
import {
  type ClipMovement,
  type MovementOptions,
  readMovement,
  remeasureUnison,
} from '../evidence/clip-movement.ts';
import { defineMovementAnalyser, motionAnalyser } from './analysers.ts';
import type { EvidenceCache } from './evidence-cache.ts';
import { disownWatch } from './watch-clip.ts';

/** Hex digits that tell one set of options from another. */
const KEY_LENGTH = 8;

/**
 * Reps and unison of a clip that was watched before, under these options; decodes nothing. Null: its motion is not in
 * the cache, or cannot be read, so that the clip is to be watched again. Each set of options is read once.
 */
export async function readClipMovement(
  cache: EvidenceCache,
  contentId: string,
  options: MovementOptions,
): Promise<ClipMovement | null> {
  const known = await recallMovement(cache, contentId, options);
  if (known) return known;
  const motion = await cache.read(contentId, motionAnalyser);
  if (!motion) {
    await disownWatch(cache, contentId);
    return null;
  }
  const estimated = await recallEstimated(cache, contentId, options);
  const movement = estimated
    ? remeasureUnison(motion, estimated, options.unison)
    : readMovement(motion, options);
  await cache.write(contentId, getAnalyser(options), movement);
  return movement;
}

/** The movement with lanes estimated, whose reps serve for the teacher's lanes too; null: no lanes given, or not read. */
async function recallEstimated(
  cache: EvidenceCache,
  contentId: string,
  { reps, unison: { lanes = null, ...unison } }: MovementOptions,
): Promise<ClipMovement | null> {
  return lanes === null ? null : recallMovement(cache, contentId, { reps, unison });
}

/** The same where it was read before; computes nothing. */
export function recallMovement(
  cache: EvidenceCache,
  contentId: string,
  options: MovementOptions,
): Promise<ClipMovement | null> {
  return cache.read(contentId, getAnalyser(options));
}

function getAnalyser(options: MovementOptions) {
  return defineMovementAnalyser(getOptionsKey(options));
}

/** Names a set of options in an entry's name: a few hex digits. */
export function getOptionsKey({ reps, unison }: MovementOptions): string {
  const parts = [reps.counting, reps.cycleSeconds ?? null, unison.lanes ?? null, unison.toleranceSeconds];
  return createHash('sha256').update(JSON.stringify(parts)).digest('hex').slice(0, KEY_LENGTH);
}
