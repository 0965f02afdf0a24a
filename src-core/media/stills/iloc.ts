import type { Box, ByteRange } from '../bmff/walk-boxes.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import { type ByteView, viewBytes } from '../byte-view.ts';

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
  const view = viewBytes(await bytes.read(box.bodyStart, box.end - box.bodyStart));
  const layout = readLayout(view);
  const isLong = layout.version === 2;
  const count = isLong ? view.u32(6) : view.u16(6);
  let at = isLong ? 10 : 8;
  for (let index = 0; index < count && at < view.length; index += 1) {
    const item = readItem(view, at, layout);
    if (item.id === id) return item.range;
    at = item.end;
  }
  return null;
}

function readLayout(view: ByteView): Layout {
  const version = view.u8(0);
  return {
    version,
    offsetBytes: view.u8(4) >> 4,
    lengthBytes: view.u8(4) & 15,
    baseBytes: view.u8(5) >> 4,
    indexBytes: version === 0 ? 0 : view.u8(5) & 15,
  };
}

function readItem(view: ByteView, start: number, layout: Layout) {
  const idBytes = layout.version === 2 ? 4 : 2;
  const id = readNumber(view, start, idBytes);
  const methodAt = start + idBytes;
  const isInFile = layout.version === 0 || (view.u16(methodAt) & 15) === 0;
  const baseAt = methodAt + (layout.version === 0 ? 0 : 2) + 2;
  const base = readNumber(view, baseAt, layout.baseBytes);
  const extents = view.u16(baseAt + layout.baseBytes);
  const firstAt = baseAt + layout.baseBytes + 2;
  const offsetAt = firstAt + layout.indexBytes;
  const from = base + readNumber(view, offsetAt, layout.offsetBytes);
  const length = readNumber(view, offsetAt + layout.offsetBytes, layout.lengthBytes);
  const range: ByteRange | null = isInFile && extents > 0 ? { start: from, end: from + length } : null;
  return {
    id,
    range,
    end: firstAt + extents * (layout.indexBytes + layout.offsetBytes + layout.lengthBytes),
  };
}

/** An unsigned number of 0 to 8 bytes; above 2^53 not exact, which no file reaches. */
function readNumber(view: ByteView, at: number, byteCount: number): number {
  let value = 0;
  for (let index = 0; index < byteCount; index += 1) value = value * 256 + view.u8(at + index);
  return value;
}
