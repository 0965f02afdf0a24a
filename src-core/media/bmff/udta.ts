import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU16 } from '../byte-numbers.ts';
import { readText } from '../byte-text.ts';
import { readMeta } from './meta.ts';
import type { MovieDraft } from './movie-draft.ts';
import { isKnownTagName, noteDateTag, noteTag } from './tag-names.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

const MOST_TEXT_BYTES = 1024;

/**
 * User data of the movie: QuickTime's own texts in `udta` (Apple, QuickTime File Format, "User data atoms"), the
 * same letters as items of `udta/meta/ilst` in MP4, and the ISO user-data `date`, of which Apple's headers say
 * "typically the date and time when the clip's recording started" (AVMetadataISOUserDataKeyDate).
 */
export async function readUserData(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const problem = await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (child) => {
    if (child.type === 'meta') await readMeta(bytes, child, draft);
    else if (child.type === 'date') noteDateTag(draft, 'recording-key', await readDateBox(bytes, child));
    else if (isKnownTagName(child.type)) noteTag(draft, child.type, await readSizedText(bytes, child));
  });
  if (problem) draft.problems.push(problem);
}

/** QuickTime's text: its length and its language in two bytes each, then the letters; the first language counts. */
async function readSizedText(bytes: BoundedBytes, box: Box): Promise<string> {
  const body = await bytes.read(box.bodyStart, Math.min(4 + MOST_TEXT_BYTES, box.end - box.bodyStart));
  const length = readU16(body, 0);
  return readText(body.subarray(4, 4 + length));
}

/** ISO user data's `date`: version, flags and language before the text where they are written, else text alone. */
async function readDateBox(bytes: BoundedBytes, box: Box): Promise<string> {
  const body = await bytes.read(box.bodyStart, Math.min(64, box.end - box.bodyStart));
  const isTextAlone = (body[0] ?? 0) >= 0x30;
  return readText(isTextAlone ? body : body.subarray(6));
}
