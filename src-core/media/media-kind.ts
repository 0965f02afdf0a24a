import { viewBytes } from './byte-view.ts';
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
  const view = viewBytes(head);
  if (view.length < 8) return null;
  if (view.u8(0) === 0xff && view.u8(1) === 0xd8 && view.u8(2) === 0xff) return 'jpeg';
  if (view.u32(0) === 0x89504e47 && view.u32(4) === 0x0d0a1a0a) return 'png';
  if (view.u32(0) === 0x1a45dfa3) return 'matroska';
  if (view.letters(0) === 'RIFF') return view.letters(8) === 'AVI ' ? 'avi' : null;
  if (view.letters(4) === 'ftyp') return findKindByBrand(view.letters(8));
  return FIRST_BOXES.has(view.letters(4)) ? 'quicktime' : null;
}

function findKindByBrand(brand: string): MediaFacts['container'] {
  if (STILL_BRANDS.has(brand)) return 'heic';
  return brand === 'qt  ' ? 'quicktime' : 'mp4';
}
