import type { StripPicture } from '../app/ports.ts';
import type { StripStill } from '../evidence/strip.ts';
import { stillsAnalyser } from './analysers.ts';
import type { EvidenceCache } from './evidence-cache.ts';
import { disownWatch } from './watch-clip.ts';

/** The pictures for a strip, from the cache alone; empty where the clip was never looked at, or is to be watched again. */
export async function readStrip(
  cache: EvidenceCache,
  contentId: string,
  wanted: readonly StripStill[],
): Promise<readonly StripPicture[]> {
  const kept = await cache.read(contentId, stillsAnalyser);
  if (!kept) await disownWatch(cache, contentId);
  const [first, ...others] = kept?.stills ?? [];
  if (!first) return [];
  return wanted.map((still): StripPicture => {
    const distance = (one: typeof first) => Math.abs(one.atSeconds - still.atSeconds);
    const nearest = others.reduce((best, one) => (distance(one) < distance(best) ? one : best), first);
    return { ...still, shownSeconds: nearest.atSeconds, jpeg: nearest.jpeg };
  });
}
