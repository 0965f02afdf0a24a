import type { Plan } from '../../lesson/plan.ts';
import type { LessonScore } from '../../marking/points.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { PLAIN_WORDS } from '../grade-sheet.ts';
import { buildResult, getLessonMax } from './build-results.ts';
import type { BundleProblem } from './bundle-problem.ts';
import { type BundleCheck, checkBundle } from './check-bundle.ts';
import { convertUsers } from './convert-users.ts';
import type { Row } from './read-table.ts';
import { type ClassRows, findClassRows } from './school-set.ts';
import type { OneRosterVersion } from './tables.ts';
import { writeTables } from './write-tables.ts';

/** How a set of marks is asked for. */
export interface BundleOrder {
  readonly version: OneRosterVersion;
  /** The set that the school gave out, which the roster's ids come from. */
  readonly school: BundleCheck;
  /** Which of its classes; null: the one with most of the roster's pupils. */
  readonly classId: string | null;
  /** Which of its categories the line item belongs to; null: its only one, else one of our own. */
  readonly category: string | null;
  /** Day of the hand-in, `2025-05-15`. */
  readonly scoreDate: string;
}

/** Texts of a set by file name (`results.csv`), to be written as UTF-8. */
export type BundleFiles = ReadonlyMap<string, string>;

const OWN_CATEGORY: Row = { sourcedId: 'routemark-circuits', title: 'Station circuits' };

/**
 * The marks of a lesson as a OneRoster set: one line item, one result a pupil, and of the school's own set the rows
 * that these point to. Ids stand as the school gave them. A set that would break a rule is not given out.
 */
export function buildBundle(
  plan: Plan,
  score: LessonScore,
  order: BundleOrder,
): Outcome<BundleFiles, BundleProblem> {
  const ids = new Set(score.pupils.map(({ pupil }) => pupil.id));
  const found = findClassRows(order.school.rows, ids, order.classId);
  if (!found.ok) return found;
  const category = findCategory(found.value.categories, order.category);
  if (!category) return fail({ code: 'bundle-category-unknown', category: order.category ?? '' });
  const marks = buildMarks(plan, score, { order, rows: found.value, category });
  const written = writeTables(order.version, {
    ...carryTables(found.value, order.version),
    categories: [category],
    ...marks.tables,
  });
  const check = checkBundle({
    name: 'marks.zip',
    isArchive: true,
    files: [...written.files].map(([path, text]) => ({ path, text, packing: 'deflated' })),
  });
  if (check.faults.length > 0) return fail<BundleProblem>(...check.faults);
  return succeed(written.files, [...marks.problems, ...written.problems]);
}

function findCategory(categories: readonly Row[], wanted: string | null): Row | null {
  if (wanted !== null) return categories.find(({ sourcedId }) => sourcedId === wanted) ?? null;
  const [only, ...others] = categories;
  return only && others.length === 0 ? only : OWN_CATEGORY;
}

function carryTables(rows: ClassRows, version: OneRosterVersion): Readonly<Record<string, readonly Row[]>> {
  const { academicSessions, orgs, courses, enrollments } = rows;
  return {
    academicSessions,
    orgs,
    courses,
    classes: [rows.class],
    enrollments,
    ...convertUsers(rows, version),
  };
}

interface MarkParts {
  readonly order: BundleOrder;
  readonly rows: ClassRows;
  readonly category: Row;
}

interface Marks {
  readonly tables: { readonly lineItems: readonly Row[]; readonly results: readonly Row[] };
  readonly problems: readonly BundleProblem[];
}

function buildMarks(plan: Plan, score: LessonScore, { order, rows, category }: MarkParts): Marks {
  const classId = rows.class.sourcedId ?? '';
  const lineItem = getLineItemId(plan, classId);
  const max = getLessonMax(plan, score);
  const known = new Set(rows.users.map(({ sourcedId = '' }) => sourcedId));
  const problems: BundleProblem[] = score.pupils
    .filter(({ pupil }) => !known.has(pupil.id))
    .map(({ pupil }) => ({ code: 'bundle-pupil-unknown', pupil: pupil.id }));
  const { scoreDate } = order;
  const results = score.pupils
    .filter(({ pupil }) => known.has(pupil.id))
    .map((one) => buildResult(one, score, { lineItem, classId, max, scoreDate, words: PLAIN_WORDS }));
  const isWritten = ({ score: points }: Row) => order.version === '1.2' || points !== '';
  for (const row of results.filter((one) => !isWritten(one))) {
    const { studentSourcedId: pupil = '', scoreStatus: status = '' } = row;
    problems.push({ code: 'bundle-result-left-out', pupil, status });
  }
  const item = buildLineItem(plan, rows, { lineItem, max, category });
  return { tables: { lineItems: [item], results: results.filter(isWritten) }, problems };
}

/** The same for the same lesson and class, so that a second hand-in takes the place of the first. */
function getLineItemId({ lesson }: Plan, classId: string): string {
  const parts = [lesson.code, lesson.date, lesson.period, classId];
  return ['routemark', ...parts.map((part) => part.replace(/[^0-9A-Za-z.\-_/@]/g, '-'))].join('-');
}

function buildLineItem(
  plan: Plan,
  rows: ClassRows,
  item: { readonly lineItem: string; readonly max: number; readonly category: Row },
): Row {
  const { title, date } = plan.lesson;
  const session = findSession(rows, date)?.sourcedId ?? '';
  return {
    sourcedId: item.lineItem,
    title,
    description: plan.briefing?.objective ?? '',
    assignDate: date,
    dueDate: date,
    classSourcedId: rows.class.sourcedId ?? '',
    categorySourcedId: item.category.sourcedId ?? '',
    gradingPeriodSourcedId: session,
    academicSessionSourcedId: session,
    resultValueMin: '0',
    resultValueMax: String(item.max),
    schoolSourcedId: rows.class.schoolSourcedId ?? '',
  };
}

/** From the narrowest kind of session to the widest. */
const NARROWEST = ['gradingPeriod', 'term', 'semester', 'schoolYear'];

/** The narrowest session that the lesson's day lies in, ends exclusive; any of the class's where it lies in none. */
function findSession({ academicSessions }: ClassRows, day: string): Row | undefined {
  const byWidth = [...academicSessions].sort(
    (a, b) => NARROWEST.indexOf(a.type ?? '') - NARROWEST.indexOf(b.type ?? ''),
  );
  return (
    byWidth.find(({ startDate = '', endDate = '' }) => startDate <= day && day < endDate) ??
    academicSessions[0]
  );
}
