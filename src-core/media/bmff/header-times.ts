import type { EpochMs } from '../../platform/units.ts';
import { readU8, readU32, readU64 } from '../byte-numbers.ts';
import type { DateFact } from '../media-facts.ts';

/** Seconds from 1904-01-01T00:00:00Z, where these headers count from, to 1970 — (66·365 + 17) days. */
const SECONDS_1904_TO_1970 = 2_082_844_800n;

/** A JavaScript date reaches 8.64e15 ms either side of 1970 (ECMA-262, "Time Values and Time Range"). */
const MOST_MS = 8_640_000_000_000_000;

/**
 * The first fields of `mvhd`, `tkhd` and `mdhd`, which begin alike — ISO/IEC 14496-12 §8.2.2, §8.3.2, §8.4.2.
 * Version 0 has 32-bit times and duration, version 1 has 64-bit ones.
 */
export interface HeaderTimes {
  readonly created: bigint;
  readonly modified: bigint;
  /** What follows the times: the timescale, or the track's id in `tkhd`. */
  readonly next: number;
  /** Duration where it follows `next` at once (`mvhd`, `mdhd`); null for "unknown", all ones. */
  readonly duration: number | null;
}

/** A version no standard defines, or a body too short for its version. */
export type HeaderTimesError = { readonly version: number } | 'too-short';

/** Reads the version and the times from a header box's body. */
export function readHeaderTimes(body: Uint8Array): HeaderTimes | HeaderTimesError {
  const version = readU8(body, 0);
  if (body.length < 1) return 'too-short';
  if (version > 1) return { version };
  if (version === 1) return body.length < 32 ? 'too-short' : readLong(body);
  return body.length < 20 ? 'too-short' : readShort(body);
}

function readShort(body: Uint8Array): HeaderTimes {
  const duration = readU32(body, 16);
  return {
    created: BigInt(readU32(body, 4)),
    modified: BigInt(readU32(body, 8)),
    next: readU32(body, 12),
    duration: duration === 0xffff_ffff ? null : duration,
  };
}

function readLong(body: Uint8Array): HeaderTimes {
  const duration = readU64(body, 24);
  return {
    created: readU64(body, 4),
    modified: readU64(body, 12),
    next: readU32(body, 20),
    duration: duration === 0xffff_ffff_ffff_ffffn ? null : Number(duration),
  };
}

/** The instant of a header's number, counted in seconds from 1904 in UTC; null beyond any calendar. */
export function findHeaderInstant(raw: bigint): EpochMs | null {
  const ms = Number(raw - SECONDS_1904_TO_1970) * 1000;
  return Math.abs(ms) <= MOST_MS ? ms : null;
}

/** A header's creation number as a date fact, judged by nobody: zero becomes 1904. */
export function buildHeaderDate(field: DateFact['field'], created: bigint): DateFact {
  return {
    field,
    raw: created.toString(),
    instantMs: findHeaderInstant(created),
    local: null,
    offsetMinutes: null,
  };
}
