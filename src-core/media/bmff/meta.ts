import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters, readU32 } from '../byte-numbers.ts';
import { readText } from '../byte-text.ts';
import { findItemText } from './ilst-text.ts';
import type { MovieDraft } from './movie-draft.ts';
import { ANDROID_KEY, isKnownTagName, noteTag } from './tag-names.ts';
import { type Box, type ByteRange, walkBoxes } from './walk-boxes.ts';

const MOST_KEYS = 256;

/**
 * A `meta` box of a movie or of its user data — Apple, QuickTime File Format, "Metadata": `ilst` holds the values,
 * each under four letters, or under the number of a name that `keys` lists, counted from 1.
 */
export async function readMeta(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  let keys: readonly string[] = [];
  const problem = await walkBoxes(bytes, await findChildren(bytes, box), async (child) => {
    if (child.type === 'keys') keys = await readKeys(bytes, child);
    if (child.type === 'ilst') await readValues(bytes, child, keys, draft);
  });
  if (problem) draft.problems.push(problem);
}

/**
 * Where the boxes inside `meta` lie. ISO's begins with version and flags (ISO/IEC 14496-12 §8.11.1), QuickTime's
 * does not (Apple, QuickTime File Format, "Metadata atom"): told apart by where `hdlr` stands.
 */
async function findChildren(bytes: BoundedBytes, box: Box): Promise<ByteRange> {
  const head = await bytes.read(box.bodyStart, 8);
  const isQuickTime = head.length === 8 && readLetters(head, 4) === 'hdlr';
  return { start: box.bodyStart + (isQuickTime ? 0 : 4), end: box.end };
}

async function readKeys(bytes: BoundedBytes, box: Box): Promise<readonly string[]> {
  const body = await bytes.read(box.bodyStart, box.end - box.bodyStart);
  const keys: string[] = [];
  let at = 8;
  while (at + 8 <= body.length && keys.length < MOST_KEYS) {
    const size = readU32(body, at);
    if (size < 8 || at + size > body.length) break;
    keys.push(readText(body.subarray(at + 8, Math.min(at + size, at + 256))));
    at += size;
  }
  return keys;
}

async function readValues(
  bytes: BoundedBytes,
  box: Box,
  keys: readonly string[],
  draft: MovieDraft,
): Promise<void> {
  const problem = await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (item) => {
    const name = keys[readItemNumber(item) - 1] ?? item.type;
    if (name === ANDROID_KEY) draft.recorder.android = true;
    if (!isKnownTagName(name)) return;
    noteTag(draft, name, (await findItemText(bytes, item)) ?? '');
  });
  if (problem) draft.problems.push(problem);
}

/** With keys, an item's four "letters" are its key's number. */
function readItemNumber(item: Box): number {
  return [0, 1, 2, 3].reduce((number, index) => number * 256 + item.type.charCodeAt(index), 0);
}
