import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters, readU32LittleEndian } from '../byte-numbers.ts';

/** One RIFF chunk — Microsoft and IBM, "Multimedia Programming Interface and Data Specifications 1.0", ch. 2. */
export interface Chunk {
  readonly type: string;
  /** For `RIFF` and `LIST`: the four letters of what they hold; else empty. */
  readonly form: string;
  readonly start: number;
  /** After the header, and after the form where there is one. */
  readonly bodyStart: number;
  readonly end: number;
  readonly missingBytes: number;
}

/** Calls `visit` for each chunk of a stretch in order; chunks begin at even offsets. */
export async function walkChunks(
  bytes: BoundedBytes,
  range: { readonly start: number; readonly end: number },
  visit: (chunk: Chunk) => Promise<void> | void,
): Promise<void> {
  let at = range.start;
  while (at + 8 <= range.end) {
    const header = await bytes.read(at, 12);
    if (header.length < 8) return;
    const type = readLetters(header, 0);
    const size = readU32LittleEndian(header, 4);
    const isList = type === 'RIFF' || type === 'LIST';
    const end = at + 8 + size;
    await visit({
      type,
      form: isList ? readLetters(header, 8) : '',
      start: at,
      bodyStart: at + (isList ? 12 : 8),
      end: Math.min(end, range.end),
      missingBytes: Math.max(0, end - range.end),
    });
    at = end + (size % 2);
  }
}
