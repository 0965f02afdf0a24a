import type { MediaFacts } from '../media/media-facts.ts';
import { type EpochMs, MS_PER_SECOND, type Seconds } from '../platform/units.ts';
import { findHeaderMeaning, type HeaderMeaning } from './header-meaning.ts';
import type { Stamp, StampProblem, StampTrust } from './stamp.ts';
import type { StampCase } from './stamp-case.ts';
import { FARTHEST_ZONE_SECONDS, type FieldRule, lowerTrust, SAME_INSTANT_SECONDS } from './stamp-rules.ts';
import { buildLocalStamp } from './written-stamp.ts';
import { findOffsetMinutes } from './zoned-time.ts';

/** A header's plausible instant, and the file it stands in. */
interface FoundHeader {
  readonly facts: MediaFacts;
  readonly createdMs: EpochMs;
}

/** The stamp of a movie, track or media header: start, stop or unknown, UTC by standard or by custom. */
export function buildHeaderStamp(stampCase: StampCase, rule: FieldRule, header: FoundHeader): Stamp {
  const { facts, createdMs } = header;
  const { zone } = stampCase.input;
  const modifiedMs = rule.field === 'movie-header' ? facts.modifiedMs : null;
  const meaning = findHeaderMeaning({ facts, createdMs, modifiedMs, nameDate: stampCase.nameDate, zone });
  const durationSeconds = facts.durationSeconds ?? Number.POSITIVE_INFINITY;
  const isStop = meaning?.rule.meaning === 'stop';
  const found: Stamp = {
    readMs: createdMs,
    local: null,
    source: rule.field,
    meaning: meaning?.rule.meaning ?? 'unknown',
    startMs: isStop ? createdMs - durationSeconds * MS_PER_SECOND : createdMs,
    uncertaintySeconds: meaning ? SAME_INSTANT_SECONDS : durationSeconds,
    trust: getTrust(rule, meaning),
    reason: meaning?.rule.reason ?? rule.reason,
    problems: [],
  };
  if (meaning?.isLocalTime) return buildLocalHeaderStamp(stampCase, found, createdMs);
  return isUtc(facts, meaning) ? found : markZoneUnknown(found, zone);
}

/** A track's header keeps its one grade less, however well its meaning is known. */
function getTrust(rule: FieldRule, meaning: HeaderMeaning | null): StampTrust {
  if (!meaning) return rule.trust;
  return rule.field === 'movie-header' ? meaning.rule.trust : lowerTrust(meaning.rule.trust);
}

/** The camera wrote its own clock as if it were UTC, which the file's name gives away. */
function buildLocalHeaderStamp(stampCase: StampCase, found: Stamp, createdMs: EpochMs): Stamp {
  const shiftSeconds = ((found.startMs ?? createdMs) - createdMs) / MS_PER_SECOND;
  const local = new Date(createdMs).toISOString().slice(0, 19);
  const trust = lowerTrust(found.trust);
  return buildLocalStamp(
    stampCase,
    { ...found, local, readMs: null, trust, reason: 'header-local-by-custom' },
    shiftSeconds,
  );
}

/**
 * MP4 dates are UTC by standard. QuickTime's text leaves the zone open ("common practice is to use local time",
 * Apple, "Calendar date and time values"); Apple's and Android's own recorders write UTC, and a file name whose
 * date fits the header shows it too.
 */
function isUtc({ container, recorder }: MediaFacts, meaning: HeaderMeaning | null): boolean {
  const isByName = meaning?.rule.reason.startsWith('name-') ?? false;
  return container !== 'quicktime' || recorder.android || recorder.make === 'Apple' || isByName;
}

function markZoneUnknown(found: Stamp, zone: string | null): Stamp {
  const offsetSeconds = getOffsetSeconds(found.readMs, zone);
  const problem: StampProblem = { code: 'stamp-zone-unknown', source: found.source };
  return {
    ...found,
    uncertaintySeconds: found.uncertaintySeconds + offsetSeconds,
    // Where the school keeps UTC itself both readings are the same instant.
    trust: offsetSeconds === 0 ? found.trust : 'weak',
    problems: [problem],
  };
}

/** How far off the instant is if it was meant as the school's local time; the farthest zone where that is unknown. */
function getOffsetSeconds(ms: EpochMs | null, zone: string | null): Seconds {
  const minutes = ms === null || zone === null ? null : findOffsetMinutes(ms, zone);
  return minutes === null ? FARTHEST_ZONE_SECONDS : Math.abs(minutes) * 60;
}
