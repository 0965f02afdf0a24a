import type { EpochMs } from '../platform/units.ts';

/** What a written date says: an instant, or a local time, or (a year, a day, nonsense) neither. */
export interface WrittenDate {
  readonly instantMs: EpochMs | null;
  /** `YYYY-MM-DDTHH:MM:SS`; null where an instant is known. */
  readonly local: string | null;
  /** As written, in minutes east of UTC; null where none is written. */
  readonly offsetMinutes: number | null;
}

const NEITHER: WrittenDate = { instantMs: null, local: null, offsetMinutes: null };

const DATE_AND_TIME =
  /^(\d{4})[-:/](\d{2})[-:/](\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/;

/**
 * A date as files write it: ISO 8601 (`2026-03-02T09:05:06-0500`, `…-05:00`, `…Z`) and EXIF
 * (`2026:03:02 09:05:06`, EXIF 2.32 "DateTimeOriginal"), with or without a fraction and an offset. A date
 * without a time of day, a year alone and impossible dates name no instant and no local time.
 */
export function parseDateText(text: string): WrittenDate {
  const found = DATE_AND_TIME.exec(text.trim());
  if (!found) return NEITHER;
  const [, year, month, day, hour, minute, second = '00', fraction = '', zone] = found;
  const local = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const asUtcMs = localAsUtcMs(local);
  if (asUtcMs === null) return NEITHER;
  if (zone === undefined) return { instantMs: null, local, offsetMinutes: null };
  const offsetMinutes = parseOffset(zone);
  if (offsetMinutes === null) return { instantMs: null, local, offsetMinutes: null };
  const fractionMs = fraction === '' ? 0 : Math.trunc(Number(`0.${fraction}`) * 1000);
  return { instantMs: asUtcMs + fractionMs - offsetMinutes * 60_000, local: null, offsetMinutes };
}

/** Minutes east of UTC for `Z`, `UTC`, `+0200`, `-05:00`; null for anything else and beyond ±18 h. */
export function parseOffset(text: string): number | null {
  if (text === 'Z' || text === 'UTC') return 0;
  const found = /^([+-])(\d{2}):?(\d{2})$/.exec(text.trim());
  if (!found) return null;
  const minutes = Number(found[2]) * 60 + Number(found[3]);
  if (Number(found[3]) > 59 || minutes > 18 * 60) return null;
  return found[1] === '-' && minutes > 0 ? -minutes : minutes;
}

/** `YYYY-MM-DDTHH:MM:SS` read as if it were UTC; null where the calendar has no such day or the clock no such time. */
export function localAsUtcMs(local: string): EpochMs | null {
  const ms = Date.parse(`${local}Z`);
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 19) !== local) return null;
  return ms;
}
