import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { BundleProblem } from './bundle-problem.ts';
import type { BundleCheck } from './check-bundle.ts';
import { splitList } from './check-value.ts';
import type { Row } from './read-table.ts';

/** What marks need around them, carried over from the school's own set: one class and all it points to. */
export interface ClassRows {
  readonly class: Row;
  readonly courses: readonly Row[];
  readonly orgs: readonly Row[];
  readonly academicSessions: readonly Row[];
  /** The class's pupils who are marked. */
  readonly users: readonly Row[];
  /** Theirs, in this class. */
  readonly enrollments: readonly Row[];
  /** Theirs as pupils; empty in a set of version 1.1. */
  readonly roles: readonly Row[];
  readonly categories: readonly Row[];
}

type Rows = BundleCheck['rows'];

/** The pupils whose marks are written, by id. */
export type MarkedPupils = ReadonlySet<string>;

const NEEDED = ['classes', 'enrollments', 'users', 'courses', 'orgs', 'academicSessions'];

/**
 * The class of a school's set that the roster's pupils are enrolled in, with what it points to and nothing else:
 * no other class, no other pupil. `classId` says which class where several could be meant.
 */
export function findClassRows(
  rows: Rows,
  pupils: MarkedPupils,
  classId: string | null,
): Outcome<ClassRows, BundleProblem> {
  const missing = NEEDED.filter((table) => !rows.has(table));
  if (missing.length > 0) {
    return fail(
      ...missing.map((table): BundleProblem => ({ code: 'bundle-table-missing', file: `${table}.csv` })),
    );
  }
  const chosen = chooseClass(rows, pupils, classId);
  return chosen.ok ? carryOver(rows, pupils, chosen.value) : chosen;
}

/** A table's rows but those that are said to be gone; none where the set lacks the table. */
export function listStanding(rows: Rows, table: string): readonly Row[] {
  return (rows.get(table) ?? []).filter(({ status }) => status !== 'tobedeleted');
}

/** A test of enrolments: whether one makes one of these pupils a pupil of the class. */
export function isPupilOf(classId: string | undefined, pupils: MarkedPupils) {
  return ({ classSourcedId, userSourcedId = '', role }: Row) =>
    classSourcedId === classId && role === 'student' && pupils.has(userSourcedId);
}

/** The class that most of these pupils are in, or the one that is asked for; fails where it is not one. */
export function chooseClass(
  rows: Rows,
  pupils: MarkedPupils,
  classId: string | null,
): Outcome<Row, BundleProblem> {
  const enrollments = listStanding(rows, 'enrollments');
  const classes = listStanding(rows, 'classes')
    .filter(({ sourcedId }) => classId === null || sourcedId === classId)
    .map((row) => ({ row, pupils: enrollments.filter(isPupilOf(row.sourcedId, pupils)).length }));
  const most = Math.max(0, ...classes.map((one) => one.pupils));
  const [first, ...others] = classes.filter((one) => one.pupils === most);
  if (!first || most === 0) return fail({ code: 'bundle-class-unknown', classId });
  if (others.length === 0) return succeed(first.row);
  return fail({
    code: 'bundle-class-open',
    classIds: [first, ...others].map(({ row }) => row.sourcedId ?? ''),
  });
}

function carryOver(rows: Rows, pupils: MarkedPupils, own: Row): Outcome<ClassRows, BundleProblem> {
  const problems: BundleProblem[] = [];
  const pick = (table: string, ids: readonly string[]) => pickWithParents(rows, { table, ids, problems });
  const courses = pick('courses', [own.courseSourcedId ?? '']);
  const academicSessions = pick('academicSessions', [
    ...splitList(own.termSourcedIds ?? ''),
    ...courses.map(({ schoolYearSourcedId = '' }) => schoolYearSourcedId),
  ]);
  const enrollments = listStanding(rows, 'enrollments').filter(isPupilOf(own.sourcedId, pupils));
  const userIds = new Set(enrollments.map(({ userSourcedId }) => userSourcedId));
  const roles = listStanding(rows, 'roles').filter(
    ({ userSourcedId, role }) => role === 'student' && userIds.has(userSourcedId),
  );
  const orgs = pick('orgs', [
    own.schoolSourcedId ?? '',
    ...courses.map(({ orgSourcedId = '' }) => orgSourcedId),
    ...[...enrollments.map(({ schoolSourcedId = '' }) => schoolSourcedId)],
    ...roles.map(({ orgSourcedId = '' }) => orgSourcedId),
  ]);
  const users = listStanding(rows, 'users').filter(({ sourcedId }) => userIds.has(sourcedId));
  if (problems.length > 0) return fail(...problems);
  const categories = listStanding(rows, 'categories');
  const gradingPeriods = findGradingPeriods(listStanding(rows, 'academicSessions'), academicSessions);
  const sessions = [...academicSessions, ...gradingPeriods];
  return succeed({
    class: own,
    courses,
    orgs,
    academicSessions: sessions,
    users,
    enrollments,
    roles,
    categories,
  });
}

interface Picking {
  readonly table: string;
  /** Empty ones are passed over. */
  readonly ids: readonly string[];
  readonly problems: BundleProblem[];
}

/** Rows by id, each once, and those above them. */
function pickWithParents(rows: Rows, { table, ids, problems }: Picking): readonly Row[] {
  const byId = new Map(listStanding(rows, table).map((row) => [row.sourcedId ?? '', row]));
  const picked = new Map<string, Row>();
  const waiting = ids.filter((id) => id !== '');
  for (let id = waiting.shift(); id !== undefined; id = waiting.shift()) {
    if (picked.has(id)) continue;
    const row = byId.get(id);
    if (!row) problems.push({ code: 'bundle-row-missing', file: `${table}.csv`, id });
    else {
      picked.set(id, row);
      if (row.parentSourcedId) waiting.push(row.parentSourcedId);
    }
  }
  return [...picked.values()];
}

/** Grading periods lie below a term, which a class does not point down to. */
function findGradingPeriods(all: readonly Row[], above: readonly Row[]): readonly Row[] {
  const ids = new Set(above.map(({ sourcedId }) => sourcedId));
  return all.filter(
    ({ sourcedId, type, parentSourcedId }) =>
      type === 'gradingPeriod' && !ids.has(sourcedId) && ids.has(parentSourcedId),
  );
}
