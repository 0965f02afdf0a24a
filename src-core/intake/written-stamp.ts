import type { DateFact } from '../media/media-facts.ts';
import { MS_PER_SECOND, type Seconds } from '../platform/units.ts';
import { isPlausibleDate } from './plausible-date.ts';
import type { Stamp, StampMeaning, StampProblem } from './stamp.ts';
import type { StampCase } from './stamp-case.ts';
import { type FieldRule, lowerTrust, WRITTEN_SECOND } from './stamp-rules.ts';
import { findLocalInstants } from './zoned-time.ts';

/** The stamp of a clip of which no source gives a plausible date: trust `none`, start null, uncertainty Infinity. */
export const NO_STAMP: Stamp = {
  readMs: null,
  local: null,
  source: 'none',
  meaning: 'unknown',
  startMs: null,
  uncertaintySeconds: Number.POSITIVE_INFINITY,
  trust: 'none',
  reason: 'nothing-usable',
  problems: [],
};

/** The stamp of a date that is written out, or that needs no search for its meaning. */
export function buildFieldStamp(stampCase: StampCase, rule: FieldRule, date: DateFact): Stamp {
  const meaning: StampMeaning = rule.use === 'start' ? 'start' : 'unknown';
  const found: Stamp = {
    readMs: date.instantMs,
    local: date.local,
    source: rule.field,
    meaning,
    startMs: date.instantMs,
    uncertaintySeconds:
      rule.use === 'file-creation' ? Number.POSITIVE_INFINITY : getUncertainty(meaning, stampCase),
    trust: rule.trust,
    reason: rule.reason,
    problems: [],
  };
  if (date.local === null) return found;
  return buildLocalStamp(stampCase, { ...found, trust: lowerTrust(rule.trust) }, 0);
}

/** The stamp of a device's file name that gives a time; null where it gives none. */
export function buildNameStamp(stampCase: StampCase): Stamp | null {
  const { nameDate } = stampCase;
  if (!nameDate || nameDate.kind === 'day') return null;
  const found: Stamp = {
    ...NO_STAMP,
    source: 'file-name',
    meaning: nameDate.meaning,
    uncertaintySeconds: getUncertainty(nameDate.meaning, stampCase),
    trust: 'fair',
    reason: 'name-only',
  };
  if (nameDate.kind === 'instant') return { ...found, readMs: nameDate.ms, startMs: nameDate.ms };
  return buildLocalStamp(stampCase, { ...found, local: nameDate.local }, 0);
}

/** The stamp of a file name that gives a day and no time: nothing to order by; null for other names. */
export function buildDayStamp({ nameDate }: StampCase): Stamp | null {
  if (nameDate?.kind !== 'day') return null;
  const problem: StampProblem = { code: 'stamp-date-without-time', date: nameDate.date };
  return { ...NO_STAMP, source: 'file-name', reason: 'name-date-only', problems: [problem] };
}

/** The stamp of the file system's date; null where that is impossible too. */
export function buildFileTimeStamp({ input }: StampCase): Stamp | null {
  const { fileModifiedMs, nowMs } = input;
  if (fileModifiedMs === null || !isPlausibleDate(fileModifiedMs, nowMs)) return null;
  return {
    ...NO_STAMP,
    readMs: fileModifiedMs,
    source: 'file-time',
    startMs: fileModifiedMs,
    trust: 'weak',
    reason: 'file-time-only',
  };
}

/**
 * Reads a local time in the school's zone. One that was shown twice, or never, is flagged and not guessed; without
 * a zone it stays local.
 *
 * @param shiftSeconds from the local time to the start of the recording
 */
export function buildLocalStamp({ input }: StampCase, found: Stamp, shiftSeconds: Seconds): Stamp {
  const local = found.local ?? '';
  const unplaced: Stamp = {
    ...found,
    startMs: null,
    uncertaintySeconds: Number.POSITIVE_INFINITY,
    trust: 'weak',
  };
  const instants = input.zone === null ? null : findLocalInstants(local, input.zone);
  switch (instants?.kind) {
    case 'unique':
      return { ...found, startMs: instants.ms + shiftSeconds * MS_PER_SECOND };
    case 'ambiguous':
      return {
        ...unplaced,
        reason: 'local-time-ambiguous',
        problems: [...found.problems, { code: 'stamp-local-ambiguous', local }],
      };
    case 'skipped':
      return {
        ...unplaced,
        reason: 'local-time-skipped',
        problems: [...found.problems, { code: 'stamp-local-skipped', local }],
      };
    default:
      return {
        ...unplaced,
        problems: [...found.problems, { code: 'stamp-zone-unknown', source: found.source }],
      };
  }
}

function getUncertainty(meaning: StampMeaning, { input }: StampCase): Seconds {
  if (meaning !== 'unknown') return WRITTEN_SECOND;
  return input.facts?.durationSeconds ?? Number.POSITIVE_INFINITY;
}
