import { localAsUtcMs } from '../media/date-text.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import { type EpochMs, MS_PER_SECOND, type Seconds } from '../platform/units.ts';
import type { FileNameDate } from './file-name-date.ts';
import {
  FARTHEST_ZONE_SECONDS,
  HEADER_MEANINGS,
  type HeaderMeaningRule,
  SAME_INSTANT_SECONDS,
} from './stamp-rules.ts';
import { findLocalInstants } from './zoned-time.ts';

/** All that can tell whether a header names the beginning or the end. */
export interface HeaderEvidence {
  readonly facts: MediaFacts;
  /** The header's own instant. */
  readonly createdMs: EpochMs;
  /** The modification instant beside it; null where unknown, as for track headers. */
  readonly modifiedMs: EpochMs | null;
  readonly nameDate: FileNameDate | null;
  readonly zone: string | null;
}

/** What the evidence says: which rule held, and whether the header turned out to hold a local time. */
export interface HeaderMeaning {
  readonly rule: HeaderMeaningRule;
  readonly isLocalTime: boolean;
}

/** Zones differ from UTC by whole quarters of an hour (IANA time zone database, offsets in use since 1990). */
const QUARTER_MS = 15 * 60 * MS_PER_SECOND;

/** Start or stop, by the rules of `HEADER_MEANINGS`; null where none of them holds. */
export function findHeaderMeaning(evidence: HeaderEvidence): HeaderMeaning | null {
  const { createdMs, modifiedMs, facts } = evidence;
  const { durationSeconds } = facts;
  const isSameTwice = modifiedMs === null || modifiedMs === createdMs;
  if (durationSeconds !== null && modifiedMs !== null && modifiedMs > createdMs) {
    const isAfterDuration = isSameInstant(createdMs + durationSeconds * MS_PER_SECOND, modifiedMs);
    if (isAfterDuration) return { rule: HEADER_MEANINGS.modifiedAfterDuration, isLocalTime: false };
  }
  const byName = isSameTwice ? findMeaningByName(evidence) : null;
  if (byName) return byName;
  const isAndroidStop = isSameTwice && facts.recorder.android && durationSeconds !== null;
  return isAndroidStop ? { rule: HEADER_MEANINGS.android, isLocalTime: false } : null;
}

function findMeaningByName(evidence: HeaderEvidence): HeaderMeaning | null {
  const { nameDate, createdMs, zone, facts } = evidence;
  if (!nameDate || nameDate.kind === 'day' || nameDate.meaning !== 'start') return null;
  const tries = [
    { rule: HEADER_MEANINGS.namePlusDuration, seconds: facts.durationSeconds },
    { rule: HEADER_MEANINGS.nameIsHeader, seconds: 0 },
  ];
  for (const { rule, seconds } of tries) {
    if (seconds === null) continue;
    const nameMs = createdMs - seconds * MS_PER_SECOND;
    const instants = findNameInstants(nameDate, zone, nameMs);
    if (instants.some((ms) => isSameInstant(ms, nameMs))) return { rule, isLocalTime: false };
  }
  if (nameDate.kind !== 'local') return null;
  const asIfUtc = localAsUtcMs(nameDate.local) ?? Number.NaN;
  const local = tries.find(
    ({ seconds }) => seconds !== null && isSameInstant(asIfUtc + seconds * MS_PER_SECOND, createdMs),
  );
  return local ? { rule: local.rule, isLocalTime: true } : null;
}

/**
 * The instants a name's date can mean. A local time without a zone means, of all zones there are, the instant
 * nearest to the one it is held against.
 */
export function findNameInstants(
  nameDate: FileNameDate,
  zone: string | null,
  nearMs: EpochMs,
): readonly EpochMs[] {
  if (nameDate.kind === 'instant') return [nameDate.ms];
  if (nameDate.kind === 'day') return [];
  if (zone === null) return findNearestZoneInstant(nameDate.local, nearMs);
  const found = findLocalInstants(nameDate.local, zone);
  if (found.kind === 'unique') return [found.ms];
  return found.kind === 'ambiguous' ? [found.earlierMs, found.laterMs] : [];
}

function findNearestZoneInstant(local: string, nearMs: EpochMs): readonly EpochMs[] {
  const asIfUtc = localAsUtcMs(local);
  if (asIfUtc === null) return [];
  const offsetMs = Math.round((asIfUtc - nearMs) / QUARTER_MS) * QUARTER_MS;
  const isZone = Math.abs(offsetMs) <= FARTHEST_ZONE_SECONDS * MS_PER_SECOND;
  return isZone ? [asIfUtc - offsetMs] : [];
}

function isSameInstant(aMs: EpochMs, bMs: EpochMs): boolean {
  return Math.abs(aMs - bMs) <= SAME_INSTANT_SECONDS * MS_PER_SECOND;
}

/** How far an instant lies outside a recording that began at `startMs`; zero within it. */
export function getSecondsOutside(ms: EpochMs, startMs: EpochMs, durationSeconds: Seconds): Seconds {
  const endMs = startMs + durationSeconds * MS_PER_SECOND;
  return Math.max(0, startMs - ms, ms - endMs) / MS_PER_SECOND;
}
