import { localAsUtcMs } from '../media/date-text.ts';
import type { DateFact } from '../media/media-facts.ts';
import type { EpochMs } from '../platform/units.ts';
import { type FileNameDate, findFileNameDate } from './file-name-date.ts';
import { buildHeaderStamp } from './header-stamp.ts';
import { isPlausibleDate } from './plausible-date.ts';
import type { Stamp, StampProblem } from './stamp.ts';
import type { StampCase, StampInput } from './stamp-case.ts';
import { findDisagreements } from './stamp-conflicts.ts';
import { FIELD_RULES, type FieldRule, LAST_FIELD_RULES } from './stamp-rules.ts';
import {
  buildDayStamp,
  buildFieldStamp,
  buildFileTimeStamp,
  buildNameStamp,
  NO_STAMP,
} from './written-stamp.ts';

/**
 * The stamp of a clip: the first of the rules in `stamp-rules.ts` that gives a plausible date. Dates refused on
 * the way, and sources that contradict the chosen one, stand among its problems.
 */
export function chooseStamp(input: StampInput): Stamp {
  const nameDate = findPlausibleNameDate(input);
  const stampCase: StampCase = { input, nameDate };
  const refused: StampProblem[] = [];
  const stamp =
    findStampByRules(stampCase, FIELD_RULES, refused) ??
    buildNameStamp(stampCase) ??
    findStampByRules(stampCase, LAST_FIELD_RULES, refused) ??
    buildDayStamp(stampCase) ??
    buildFileTimeStamp(stampCase) ??
    NO_STAMP;
  const conflicts = findDisagreements(stamp, stampCase);
  // A header of unknown meaning and a name that denies it: either may be right.
  const isDenied = stamp.meaning === 'unknown' && conflicts.some(({ other }) => other === 'file-name');
  return {
    ...stamp,
    trust: isDenied ? 'weak' : stamp.trust,
    problems: [...refused, ...stamp.problems, ...conflicts],
  };
}

function findPlausibleNameDate({ fileName, nowMs }: StampInput): FileNameDate | null {
  const date = findFileNameDate(fileName);
  if (!date) return null;
  const ms =
    date.kind === 'instant'
      ? date.ms
      : localAsUtcMs(date.kind === 'local' ? date.local : `${date.date}T00:00:00`);
  return ms !== null && isPlausibleDate(ms, nowMs) ? date : null;
}

/** Fields that repeat what the movie's own header says; when it is refused, that is told once. */
const REPEATING = new Set(['media-header', 'track-header']);

function findStampByRules(
  stampCase: StampCase,
  rules: readonly FieldRule[],
  refused: StampProblem[],
): Stamp | null {
  const { facts, nowMs } = stampCase.input;
  const candidates = rules.flatMap((rule) =>
    (facts?.dates ?? []).filter(({ field }) => field === rule.field).map((date) => ({ rule, date })),
  );
  for (const { rule, date } of candidates) {
    const fault = findFault(date, nowMs);
    if (!fault) return buildStamp(stampCase, rule, date);
    if (!REPEATING.has(rule.field)) refused.push(fault);
  }
  return null;
}

function buildStamp(stampCase: StampCase, rule: FieldRule, date: DateFact): Stamp {
  const { facts } = stampCase.input;
  if (rule.use === 'header' && date.instantMs !== null && facts) {
    return buildHeaderStamp(stampCase, rule, { facts, createdMs: date.instantMs });
  }
  return buildFieldStamp(stampCase, rule, date);
}

/** What is wrong with a date as found; null where it can be when a clip was filmed. */
function findFault(date: DateFact, nowMs: EpochMs): StampProblem | null {
  const ms = date.instantMs ?? (date.local === null ? null : localAsUtcMs(date.local));
  if (ms !== null && isPlausibleDate(ms, nowMs)) return null;
  const isDay = ms === null && /^\d{4}[-:/]\d{2}[-:/]\d{2}$/.test(date.raw);
  if (isDay) return { code: 'stamp-date-without-time', date: date.raw };
  return { code: 'stamp-header-unusable', field: date.field, raw: date.raw };
}
