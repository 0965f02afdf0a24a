import type { Box, ByteRange } from '../bmff/walk-boxes.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU8, readU16, readU32 } from '../byte-numbers.ts';

/** How one `iloc` writes its numbers: bytes of each, as its first bytes say. */
interface Layout {
  readonly version: number;
  readonly offsetBytes: number;
  readonly lengthBytes: number;
  readonly baseBytes: number;
  readonly indexBytes: number;
}

/**
 * Where an item lies — ISO/IEC 14496-12 §8.11.3: its first extent, for items kept in the file itself. Null where
 * the item is not listed, or is kept elsewhere.
 */
export async function findItemRange(bytes: BoundedBytes, box: Box, id: number): Promise<ByteRange | null> {
  const body = await bytes.read(box.bodyStart, box.end - box.bodyStart);
  const layout = readLayout(body);
  const isLong = layout.version === 2;
  const count = isLong ? readU32(body, 6) : readU16(body, 6);
  let at = isLong ? 10 : 8;
  for (let index = 0; index < count && at < body.length; index += 1) {
    const item = readItem(body, at, layout);
    if (item.id === id) return item.range;
    at = item.end;
  }
  return null;
}

function readLayout(body: Uint8Array): Layout {
  const version = readU8(body, 0);
  return {
    version,
    offsetBytes: readU8(body, 4) >> 4,
    lengthBytes: readU8(body, 4) & 15,
    baseBytes: readU8(body, 5) >> 4,
    indexBytes: version === 0 ? 0 : readU8(body, 5) & 15,
  };
}

function readItem(body: Uint8Array, start: number, layout: Layout) {
  const idBytes = layout.version === 2 ? 4 : 2;
  const id = readNumber(body, start, idBytes);
  const methodAt = start + idBytes;
  const isInFile = layout.version === 0 || (readU16(body, methodAt) & 15) === 0;
  const baseAt = methodAt + (layout.version === 0 ? 0 : 2) + 2;
  const base = readNumber(body, baseAt, layout.baseBytes);
  const extents = readU16(body, baseAt + layout.baseBytes);
  const firstAt = baseAt + layout.baseBytes + 2;
  const offsetAt = firstAt + layout.indexBytes;
  const from = base + readNumber(body, offsetAt, layout.offsetBytes);
  const length = readNumber(body, offsetAt + layout.offsetBytes, layout.lengthBytes);
  const range: ByteRange | null = isInFile && extents > 0 ? { start: from, end: from + length } : null;
  return {
    id,
    range,
    end: firstAt + extents * (layout.indexBytes + layout.offsetBytes + layout.lengthBytes),
  };
}

/** An unsigned number of 0 to 8 bytes; above 2^53 not exact, which no file reaches. */
function readNumber(body: Uint8Array, at: number, byteCount: number): number {
  let value = 0;
  for (let index = 0; index < byteCount; index += 1) value = value * 256 + readU8(body, at + index);
  return value;
}
