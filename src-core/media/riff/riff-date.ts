import { localAsUtcMs, parseDateText, type WrittenDate } from '../date-text.ts';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const C_TIME = /^[a-z]{3}\s+([a-z]{3})\s+(\d{1,2})\s+(\d{2}:\d{2}:\d{2})\s+(\d{4})$/i;

/**
 * The text of `IDIT` or `ICRD`: as C's `asctime` prints it (`Mon Mar 02 09:05:06 2026`), which most cameras write,
 * or as ISO 8601. Without an offset: a local time.
 */
export function parseRiffDate(text: string): WrittenDate {
  const found = C_TIME.exec(text.trim());
  if (!found) return parseDateText(text);
  const [, name = '', day = '', time, year] = found;
  const month = MONTHS.indexOf(name.toLowerCase()) + 1;
  const local = `${year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}T${time}`;
  return { instantMs: null, local: localAsUtcMs(local) === null ? null : local, offsetMinutes: null };
}
