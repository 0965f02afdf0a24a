import { type Box, type ByteRange, walkBoxes, walkTopBoxes } from '../bmff/walk-boxes.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters, readU8, readU16, readU32 } from '../byte-numbers.ts';
import { findItemRange } from './iloc.ts';

/** The most of one EXIF item that is read; cameras keep it below 64 kB, as JPEG demands (EXIF 2.32 §4.5.4). */
const MOST_BYTES = 64 * 1024;

/**
 * The EXIF of a HEIC or AVIF file, from its TIFF header on — ISO/IEC 23008-12 annex A.2.1: `iinf` names the item of
 * type `Exif`, `iloc` says where it lies, and its first four bytes how far the TIFF header is from there. Null where
 * there is none, or none that can be reached. (exifr can find it as well, but writes to the console on the way.)
 */
export async function findHeicExif(bytes: BoundedBytes): Promise<Uint8Array | null> {
  let item: ByteRange | null = null;
  await walkTopBoxes(bytes, async (box) => {
    if (box.type === 'meta') item ??= await findExifItem(bytes, box);
  });
  return item === null ? null : readExifItem(bytes, item);
}

async function findExifItem(bytes: BoundedBytes, meta: Box): Promise<ByteRange | null> {
  let id: number | null = null;
  let locations: Box | null = null;
  await walkBoxes(bytes, { start: meta.bodyStart + 4, end: meta.end }, async (box) => {
    if (box.type === 'iinf') id ??= await findExifId(bytes, box);
    if (box.type === 'iloc') locations = box;
  });
  return id === null || locations === null ? null : findItemRange(bytes, locations, id);
}

/** Item information — ISO/IEC 14496-12 §8.11.6: version, flags, count, then an `infe` for every item. */
async function findExifId(bytes: BoundedBytes, iinf: Box): Promise<number | null> {
  const version = readU8(await bytes.read(iinf.bodyStart, 4), 0);
  let id: number | null = null;
  const entries = { start: iinf.bodyStart + (version === 0 ? 6 : 8), end: iinf.end };
  await walkBoxes(bytes, entries, async (box) => {
    if (box.type !== 'infe' || id !== null) return;
    const body = await bytes.read(box.bodyStart, Math.min(14, box.end - box.bodyStart));
    const isLong = readU8(body, 0) === 3;
    if (readLetters(body, isLong ? 10 : 8) === 'Exif') id = isLong ? readU32(body, 4) : readU16(body, 4);
  });
  return id;
}

async function readExifItem(bytes: BoundedBytes, { start, end }: ByteRange): Promise<Uint8Array | null> {
  const item = await bytes.read(start, Math.min(MOST_BYTES, end - start));
  const tiffAt = 4 + readU32(item, 0);
  return tiffAt + 8 <= item.length ? item.slice(tiffAt) : null;
}
