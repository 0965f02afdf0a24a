import papa from 'papaparse';
import type { RosterProblem } from './lesson-problem.ts';
import type { Plan, SquadCode } from './plan.ts';
import { findRosterSquad } from './squad-name.ts';

/** Whether a pupil was there. `excused` has no reason here on purpose: a medical reason is never stored. */
export type Attendance = (typeof ATTENDANCES)[number];

/** The words of attendance, as roster.csv has them. */
export const ATTENDANCES = ['present', 'absent', 'excused', 'late'] as const;

/** What a pupil's family has said to filming, as far as the school has told. */
export type Consent = 'given' | 'withheld';

/** One pupil of the class. */
export interface Pupil {
  /** The gradebook's id, never changed. */
  readonly id: string;
  readonly given: string;
  readonly family: string;
  readonly squad: SquadCode;
  readonly attendance: Attendance;
  /** Local time of arrival, `HH:MM`; only for `late`. */
  readonly arrived: string | null;
  /** False: on the do-not-film list; no still of the pupil's squad shows in print or export. */
  readonly stills: boolean;
  /** Left out: nothing is noted. Where it is withheld, `stills` is false whatever its own column says. */
  readonly consent?: Consent;
}

/** The class as read from roster.csv, with what could not be read. */
export interface RosterReading {
  readonly pupils: readonly Pupil[];
  /**
   * Squads of which no still may show: somebody of theirs is on the do-not-film list, whoever has left or stands in a
   * faulty line too. Where it cannot be told whose squad that is, or who is on the list at all, every squad.
   */
  readonly unshown: readonly SquadCode[];
  readonly problems: readonly RosterProblem[];
}

const REQUIRED = ['id', 'given', 'family', 'squad'] as const;
const LOCAL_TIME = /^([01]\d|2[0-3]):[0-5]\d$/;

/** What decoding puts in the place of a letter that is not UTF-8. */
const GARBLED = /\uFFFD/;

type Fields = Readonly<Record<string, string>>;

/**
 * Reads roster.csv (format 1): a heading line naming the columns in any order, `id,given,family,squad` required;
 * `attendance`, `arrived`, `stills`, `consent` and `left` optional; further columns are left alone. A pupil with `yes` under
 * `left` is no longer in the class and is not read. Squads go by code, else by name,
 * pinnie or tablet. A line with a problem that leaves its pupil's squad or id open is left out; lesser slips are
 * reported and read in the pupil's favour (present, stills not allowed, consent withheld).
 */
export function parseRoster(text: string, plan: Plan): RosterReading {
  const { data: rows, errors } = papa.parse(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  const garbled = text.split('\n').findIndex((line) => GARBLED.test(line));
  const everySquad = plan.squads.map(({ code }) => code);
  const refuse = (...problems: RosterProblem[]) => ({ pupils: [], unshown: everySquad, problems });
  if (text.includes('\u0000')) return refuse({ code: 'roster-not-utf8', line: 1 });
  const open = errors.find(({ code }) => code === 'MissingQuotes');
  if (open) return refuse({ code: 'roster-quote-open', line: (open.row ?? 0) + 1 });
  const heads = (rows[0] ?? []).map((head) => head.trim().toLowerCase());
  const missing = REQUIRED.filter((column) => !heads.includes(column));
  if (missing.length > 0) {
    return refuse(...missing.map((column): RosterProblem => ({ code: 'roster-column-missing', column })));
  }
  const pupils: Pupil[] = [];
  const problems: RosterProblem[] = garbled < 0 ? [] : [{ code: 'roster-not-utf8', line: garbled + 1 }];
  const unshown = new Set<SquadCode>();
  const firstLines = new Map<string, number>();
  rows.slice(1).forEach((row, index) => {
    const line = index + 2;
    if (row.every((field) => field.trim() === '')) return;
    if (row.length !== heads.length) problems.push({ code: 'roster-line-uneven', line });
    const fields: Fields = Object.fromEntries(heads.map((head, at) => [head, (row[at] ?? '').trim()]));
    for (const squad of findUnshown(fields, plan)) unshown.add(squad);
    if (fields.left?.toLowerCase() === 'yes') return;
    const reading = readPupil(fields, line, plan);
    problems.push(...reading.problems);
    if (!reading.pupil) return;
    const firstLine = firstLines.get(reading.pupil.id);
    if (firstLine !== undefined) {
      problems.push({ code: 'roster-id-twice', line, id: reading.pupil.id, firstLine });
      return;
    }
    firstLines.set(reading.pupil.id, line);
    pupils.push(reading.pupil);
  });
  if (pupils.length === 0 && problems.length === 0) problems.push({ code: 'roster-empty' });
  return { pupils, unshown: everySquad.filter((code) => unshown.has(code)), problems };
}

/** The squads in whose pictures the pupil of a line may be, where none may show. */
function findUnshown(fields: Fields, plan: Plan): readonly SquadCode[] {
  if (mayShow(fields)) return [];
  const squad = findRosterSquad(fields.squad ?? '', plan.squads);
  return (squad ? [squad] : plan.squads).map(({ code }) => code);
}

function readPupil(
  fields: Fields,
  line: number,
  plan: Plan,
): { pupil: Pupil | null; problems: RosterProblem[] } {
  const problems: RosterProblem[] = [];
  const empty = REQUIRED.find((column) => !fields[column]);
  if (empty) return { pupil: null, problems: [{ code: 'roster-field-empty', line, column: empty }] };
  const squad = findRosterSquad(fields.squad ?? '', plan.squads);
  if (!squad) {
    return { pupil: null, problems: [{ code: 'roster-squad-unknown', line, squad: fields.squad ?? '' }] };
  }
  const presence = readPresence(fields, line, problems);
  const slip = findArrivalSlip(presence.arrived, line, plan);
  if (slip) problems.push(slip);
  const consent = readConsent(fields.consent, line, problems);
  const { stills } = fields;
  if (!isYesOrEmpty(stills) && stills?.toLowerCase() !== 'no') {
    problems.push({ code: 'roster-stills-unknown', line, value: stills ?? '' });
  }
  const pupil: Pupil = {
    id: fields.id ?? '',
    given: fields.given ?? '',
    family: fields.family ?? '',
    squad: squad.code,
    ...presence,
    stills: mayShow(fields),
    ...(consent !== null && { consent }),
  };
  return { pupil, problems };
}

function readPresence(
  fields: Fields,
  line: number,
  problems: RosterProblem[],
): Pick<Pupil, 'attendance' | 'arrived'> {
  const word = (fields.attendance || 'present').toLowerCase();
  const attendance = ATTENDANCES.find((known) => known === word);
  if (!attendance) {
    problems.push({ code: 'roster-attendance-unknown', line, value: word });
    return { attendance: 'present', arrived: null };
  }
  if (attendance !== 'late') return { attendance, arrived: null };
  const arrived = (fields.arrived ?? '').padStart(5, '0');
  if (!fields.arrived) problems.push({ code: 'roster-arrival-missing', line });
  else if (!LOCAL_TIME.test(arrived))
    problems.push({ code: 'roster-arrival-invalid', line, value: fields.arrived });
  return { attendance: 'late', arrived: LOCAL_TIME.test(arrived) ? arrived : null };
}

function findArrivalSlip(value: string | null, line: number, plan: Plan): RosterProblem | null {
  const period = plan.periods.find(({ code }) => code === plan.lesson.period);
  if (value === null || !period || (value >= period.start && value <= period.end)) return null;
  return { code: 'roster-arrival-outside', line, value, from: period.start, to: period.end };
}

/** Neither on the do-not-film list nor without consent; a word that is neither yes nor no counts as no. */
function mayShow({ stills, consent }: Fields): boolean {
  return isYesOrEmpty(stills) && isYesOrEmpty(consent);
}

function isYesOrEmpty(value = ''): boolean {
  return value === '' || value.toLowerCase() === 'yes';
}

function readConsent(value: string | undefined, line: number, problems: RosterProblem[]): Consent | null {
  if (value === undefined || value === '') return null;
  if (value.toLowerCase() === 'yes') return 'given';
  if (value.toLowerCase() !== 'no') problems.push({ code: 'roster-consent-unknown', line, value });
  return 'withheld';
}
