import { fail, type Outcome } from '../platform/outcome.ts';
import { readBmff } from './bmff/read-bmff.ts';
import { boundBytes } from './bounded-bytes.ts';
import type { ByteSource } from './byte-source.ts';
import { readMatroska } from './ebml/read-matroska.ts';
import type { MediaFacts } from './media-facts.ts';
import { findMediaKind, KIND_BYTES } from './media-kind.ts';
import type { MediaProblem } from './media-problem.ts';
import { readAvi } from './riff/read-avi.ts';
import { readStill } from './stills/read-still.ts';

/**
 * What a file's bytes say of themselves: kind, length, dates, recorder, codec. Reads ranges only, within
 * `READING_LIMITS`, and believes nothing: sizes, counts and nesting are bounded, and whatever cannot be followed
 * becomes a problem beside what could be read. Rejects only where the source does.
 */
export async function readMedia(source: ByteSource): Promise<Outcome<MediaFacts, MediaProblem>> {
  if (source.size === 0) return fail({ code: 'media-empty' });
  const bytes = boundBytes(source);
  const kind = findMediaKind(await bytes.read(0, KIND_BYTES));
  switch (kind) {
    case 'mp4':
    case 'quicktime':
      return readBmff(bytes, kind);
    case 'matroska':
    case 'webm':
      return readMatroska(bytes);
    case 'avi':
      return readAvi(bytes);
    case 'jpeg':
    case 'heic':
    case 'png':
      return readStill(bytes, kind);
    case null:
      return fail({ code: 'media-unknown-kind' });
  }
}
