import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters, readU32, readU64 } from '../byte-numbers.ts';
import type { MediaProblem } from '../media-problem.ts';

/** A stretch of a file, in bytes from its beginning; `end` is not part of it. */
export interface ByteRange {
  readonly start: number;
  readonly end: number;
}

/** One box — ISO/IEC 14496-12 §4.2: size, four letters, body. */
export interface Box {
  /** Its four letters, each byte one letter. */
  readonly type: string;
  readonly start: number;
  /** Where its body begins: after 8 bytes, after 16 with a 64-bit size. */
  readonly bodyStart: number;
  /** Where it ends, cut at the end of what holds it. */
  readonly end: number;
  /** How far it says it reaches beyond what holds it; zero where it fits. */
  readonly missingBytes: number;
}

/** Looks at one box; what it finds it keeps for itself. */
type BoxVisitor = (box: Box) => Promise<void> | void;

/**
 * Calls `visit` for each box at the top of a file, in order and without looking inside. Size 0 reaches to the end
 * of the file; a box that reaches beyond it is visited, cut. Gives the problem that ended the walk early, or null.
 */
export async function walkTopBoxes(bytes: BoundedBytes, visit: BoxVisitor): Promise<MediaProblem | null> {
  let at = 0;
  while (at + 8 <= bytes.size) {
    const header = await bytes.read(at, 16);
    if (header.length < 8) return { code: 'media-reading-limit' };
    const box = readBoxHeader(header, at, bytes.size);
    if (!box) return buildMalformed(header, at);
    await visit(box);
    at = box.end;
  }
  return null;
}

/**
 * Calls `visit` for each box inside another, in order. Size 0 ends the list, as QuickTime closes user data; a box
 * that reaches beyond its holder is visited, cut, and ends the walk with a problem.
 */
export async function walkBoxes(
  bytes: BoundedBytes,
  range: ByteRange,
  visit: BoxVisitor,
): Promise<MediaProblem | null> {
  let at = range.start;
  while (at + 8 <= range.end) {
    const header = await bytes.read(at, 16);
    if (header.length < 8) return { code: 'media-reading-limit' };
    if (readU32(header, 0) === 0) return null;
    const box = readBoxHeader(header, at, range.end);
    if (!box) return buildMalformed(header, at);
    await visit(box);
    if (box.missingBytes > 0) return buildMalformed(header, at);
    at = box.end;
  }
  return null;
}

function buildMalformed(header: Uint8Array, at: number): MediaProblem {
  return { code: 'media-malformed', at, part: printable(readLetters(header, 4)) };
}

/** The box whose header these bytes are; null where its size is smaller than its own header. */
function readBoxHeader(header: Uint8Array, start: number, end: number): Box | null {
  const isLarge = readU32(header, 0) === 1;
  const headerBytes = isLarge ? 16 : 8;
  if (header.length < headerBytes) return null;
  const written = isLarge ? Number(readU64(header, 8)) : readU32(header, 0);
  const size = written === 0 ? end - start : written;
  if (size < headerBytes) return null;
  return {
    type: readLetters(header, 4),
    start,
    bodyStart: start + headerBytes,
    end: Math.min(start + size, end),
    missingBytes: Math.max(0, start + size - end),
  };
}

/** Four letters as they may be shown: anything but printable ASCII and © becomes a dot. */
export function printable(letters: string): string {
  return letters.replace(/[^\x20-\x7e©]/g, '.');
}
