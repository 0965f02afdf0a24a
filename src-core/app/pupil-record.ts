import { type AccountWords, buildAccountSheet } from '../gradebook/account-sheet.ts';
import { buildNameHider } from '../lesson/hide-names.ts';
import { findSquad } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { LESSON_PARTS, listLessonParts } from '../lesson-file/lesson-parts.ts';
import type { JournalEvent } from '../marking/journal-event.ts';
import type { PupilScore } from '../marking/points.ts';
import type { EpochMs } from '../platform/units.ts';
import { findFilmsDeleted } from './check-graded.ts';
import { getPath } from './clip-reading.ts';
import type { GradedLesson } from './graded-lesson.ts';

/** Everything that a lesson holds on one pupil, in words that name no other pupil. */
export interface PupilRecord {
  readonly lesson: { readonly title: string; readonly className: string; readonly date: string };
  readonly pupil: Omit<Pupil, 'squad'> & { readonly squad: string };
  /** Null: the films that points are worked out from are there. Else they were deleted: when, ISO 8601 in UTC. */
  readonly filmsDeletedAt: string | null;
  /** Without films no points and no rows: what would be worked out is not what was handed in. */
  readonly mark: {
    readonly state: string;
    readonly points: number | null;
    readonly max: number | null;
    readonly percent: number | null;
    readonly scale: string | null;
    /** Where each point came from: heads, and rows without the pupil's own id and name. */
    readonly account: {
      readonly heads: readonly string[];
      readonly rows: readonly (string | number | null)[][];
    };
  };
  /** Decisions about this pupil alone, oldest first; those taken back too, for they are kept. */
  readonly decisions: readonly { readonly at: string; readonly what: object }[];
  /** Films of the pupil's squad. They show others too, and are not part of a record that is given out. */
  readonly films: readonly {
    readonly file: string;
    readonly startMs: EpochMs | null;
    readonly note: string | null;
  }[];
  /** When marks were handed in, and to which files. */
  readonly handedIn: readonly { readonly at: string; readonly files: readonly string[] }[];
  /** In how many of the plan's wishes for squads the pupil stands: to be apart from, or together with, others. */
  readonly wishes: { readonly apart: number; readonly together: number };
  /** Where all this is kept, for whoever has to delete it. */
  readonly keptIn: readonly string[];
}

/** What a record is made from, beside the lesson. */
export interface PupilRecordOrder {
  readonly pupil: string;
  readonly events: readonly JournalEvent[];
  readonly words: AccountWords;
}

/** Every part with pupils in it, folders with `/` at their end; of the films, the squad's are named one by one. */
const KEPT_IN = listLessonParts('records', 'made')
  .filter((part) => LESSON_PARTS[part].isOfPupils)
  .map((part) => (part.includes('.') ? part : `${part}/`));

/** The record of one pupil by the roster's id; null where the roster has no such pupil. */
export function findPupilRecord(graded: GradedLesson, order: PupilRecordOrder): PupilRecord | null {
  const { plan, pupils, journal } = graded.lesson;
  const pupil = pupils.find(({ id }) => id === order.pupil);
  const score = graded.score.pupils.find((one) => one.pupil.id === order.pupil);
  if (!pupil || !score) return null;
  const { title, className, date } = plan.lesson;
  const films = listFilms(graded, pupil);
  const filmsDeletedAt = findFilmsDeleted(graded);
  const hideNames = buildNameHider(
    pupil,
    pupils.filter(({ id }) => id !== pupil.id),
  );
  const record: PupilRecord = {
    lesson: { title, className, date },
    pupil: { ...pupil, squad: findSquad(plan, pupil.squad)?.name ?? pupil.squad },
    filmsDeletedAt,
    mark: filmsDeletedAt === null ? describeMark(graded, score, order) : NO_MARK,
    decisions: order.events.filter((event) => isAbout(event, pupil)).map(({ at, what }) => ({ at, what })),
    films,
    handedIn: journal.decisions.handedIn.map(({ at, files }) => ({ at, files })),
    wishes: {
      apart: plan.grouping.apart.filter((ids) => ids.includes(pupil.id)).length,
      together: plan.grouping.together.filter((ids) => ids.includes(pupil.id)).length,
    },
    keptIn: [...KEPT_IN, ...films.map(({ file }) => `clips/${file}`), 'evidence/'],
  };
  return mapTexts(record, hideNames);
}

const NO_MARK: PupilRecord['mark'] = {
  state: 'films-deleted',
  points: null,
  max: null,
  percent: null,
  scale: null,
  account: { heads: [], rows: [] },
};

function describeMark(
  graded: GradedLesson,
  { state, sum, percent, scale }: PupilScore,
  order: PupilRecordOrder,
): PupilRecord['mark'] {
  const [points, max] = [sum?.points ?? null, sum?.max ?? null];
  return { state, points, max, percent, scale, account: getAccount(graded, order) };
}

function listFilms({ squads, lesson }: GradedLesson, pupil: Pupil): PupilRecord['films'] {
  const own = squads.find(({ squad }) => squad.code === pupil.squad);
  return (own?.clips ?? []).map(({ reading, time }) => ({
    file: getPath(reading, pupil.squad),
    startMs: time.startMs,
    note: lesson.journal.decisions.notes.get(reading.id) ?? null,
  }));
}

/** The columns after id, name and squad. */
function getAccount(
  { lesson, score }: GradedLesson,
  { pupil, words }: PupilRecordOrder,
): PupilRecord['mark']['account'] {
  const { heads, rows } = buildAccountSheet(lesson.plan, score, words);
  return {
    heads: heads.slice(3),
    rows: rows.filter(({ cells }) => cells[0] === pupil).map(({ cells }) => cells.slice(3)),
  };
}

function isAbout({ what }: JournalEvent, { id }: Pupil): boolean {
  if (what.kind === 'attendance-set') return what.pupil === id;
  return what.kind === 'points-overridden' && what.of.type === 'pupil' && what.of.pupil === id;
}

/** The same value with every text in it changed. */
function mapTexts<Value>(value: Value, change: (text: string) => string): Value {
  if (typeof value === 'string') return change(value) as Value;
  if (Array.isArray(value)) return value.map((item) => mapTexts(item, change)) as Value;
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).map(([key, entry]) => [key, mapTexts(entry, change)]);
  return Object.fromEntries(entries) as Value;
}
