import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU32 } from '../byte-numbers.ts';
import { readText } from '../byte-text.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

/** Well-known type 1 of a value: UTF-8 — Apple, QuickTime File Format, "Well-known types". */
const UTF8 = 1;

/** The longest value read; dates and names are far shorter. */
const MOST_TEXT_BYTES = 1024;

/** The text of one metadata item (its `data` box: type, locale, value), or null where it holds no text. */
export async function findItemText(bytes: BoundedBytes, item: Box): Promise<string | null> {
  let text: string | null = null;
  await walkBoxes(bytes, { start: item.bodyStart, end: item.end }, async (child) => {
    if (child.type !== 'data' || text !== null) return;
    const body = await bytes.read(
      child.bodyStart,
      Math.min(8 + MOST_TEXT_BYTES, child.end - child.bodyStart),
    );
    if (body.length >= 8 && readU32(body, 0) === UTF8) text = readText(body.subarray(8));
  });
  return text;
}
