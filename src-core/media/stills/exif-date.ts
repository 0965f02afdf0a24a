import { parseDateText, parseOffset } from '../date-text.ts';
import type { DateFact } from '../media-facts.ts';

/**
 * DateTimeOriginal (0x9003, `YYYY:MM:DD HH:MM:SS`) and OffsetTimeOriginal (0x9011, `±HH:MM`) — EXIF 2.32 §4.6.6.
 * Without an offset the time is local, and nothing says where.
 */
export function buildExifDate(written: string, offset: string): DateFact {
  const raw = `${written} ${offset}`.trim();
  const alone = parseDateText(written);
  const isWithOffset = alone.local !== null && parseOffset(offset) !== null;
  return { field: 'exif-original', raw, ...(isWithOffset ? parseDateText(`${written}${offset}`) : alone) };
}
