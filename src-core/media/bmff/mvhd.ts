import type { BoundedBytes } from '../bounded-bytes.ts';
import { findHeaderTimes } from './header-box.ts';
import { buildHeaderDate, findHeaderInstant } from './header-times.ts';
import type { MovieDraft } from './movie-draft.ts';
import type { Box } from './walk-boxes.ts';

/** Movie header — ISO/IEC 14496-12 §8.2.2: creation, modification, timescale, duration. */
export async function readMovieHeader(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const times = await findHeaderTimes(bytes, box, draft);
  if (!times || draft.hasMovieHeader) return;
  draft.hasMovieHeader = true;
  draft.timescale = times.next;
  draft.duration = times.duration;
  draft.modifiedMs = times.modified === 0n ? null : findHeaderInstant(times.modified);
  draft.dates.push(buildHeaderDate('movie-header', times.created));
}
