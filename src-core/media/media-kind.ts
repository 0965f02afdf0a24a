import { readLetters, readU8, readU32 } from './byte-numbers.ts';
import type { MediaFacts } from './media-facts.ts';

/** Bytes that are enough to tell a file's kind. */
export const KIND_BYTES = 64;

/** Brands of still pictures in ISO boxes — ISO/IEC 23008-12 (HEIF) annex B; AVIF 1.1 §6. */
const STILL_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'mif1', 'msf1', 'avif']);

/** Boxes that QuickTime files without `ftyp` begin with — Apple, QuickTime File Format, "Movie atoms". */
const FIRST_BOXES = new Set(['moov', 'mdat', 'free', 'skip', 'wide', 'pnot']);

/**
 * A file's kind by its first bytes, or null. `matroska` stands for WebM too until its own header has been read,
 * `quicktime` for every file of boxes with the brand `qt  ` or none.
 */
export function findMediaKind(head: Uint8Array): MediaFacts['container'] | null {
  if (head.length < 8) return null;
  if (readU8(head, 0) === 0xff && readU8(head, 1) === 0xd8 && readU8(head, 2) === 0xff) return 'jpeg';
  if (readU32(head, 0) === 0x89504e47 && readU32(head, 4) === 0x0d0a1a0a) return 'png';
  if (readU32(head, 0) === 0x1a45dfa3) return 'matroska';
  if (readLetters(head, 0) === 'RIFF') return readLetters(head, 8) === 'AVI ' ? 'avi' : null;
  if (readLetters(head, 4) === 'ftyp') return findKindByBrand(readLetters(head, 8));
  return FIRST_BOXES.has(readLetters(head, 4)) ? 'quicktime' : null;
}

function findKindByBrand(brand: string): MediaFacts['container'] {
  if (STILL_BRANDS.has(brand)) return 'heic';
  return brand === 'qt  ' ? 'quicktime' : 'mp4';
}
