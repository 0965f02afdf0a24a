import type { BoundedBytes } from '../bounded-bytes.ts';
import { type HeaderTimes, readHeaderTimes } from './header-times.ts';
import type { MovieDraft } from './movie-draft.ts';
import type { Box } from './walk-boxes.ts';

/** A header box's times, or null with the problem noted in the draft. */
export async function findHeaderTimes(
  bytes: BoundedBytes,
  box: Box,
  draft: MovieDraft,
): Promise<HeaderTimes | null> {
  const body = await bytes.read(box.bodyStart, Math.min(32, box.end - box.bodyStart));
  const times = readHeaderTimes(body);
  if (times === 'too-short') {
    draft.problems.push({ code: 'media-malformed', at: box.start, part: box.type });
    return null;
  }
  if ('version' in times) {
    draft.problems.push({ code: 'media-version-unsupported', part: box.type, version: times.version });
    return null;
  }
  return times;
}
