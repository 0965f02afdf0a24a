import type { Bundle } from '../../../../src-core/gradebook/oneroster/check-bundle.ts';
import { TABLES } from '../../../../src-core/gradebook/oneroster/tables.ts';

/** Files of a set as rows of fields, heads first. */
export type RawSet = Record<string, string[][]>;

const ORGS = [
  ['sourcedId', 'status', 'dateLastModified', 'name', 'type', 'identifier', 'parentSourcedId'],
  ['org-quay', '', '', 'Cobble Quay School', 'school', '', 'org-bay'],
  ['org-bay', '', '', 'Bay District', 'district', '', ''],
];

const SESSIONS = [
  'sourcedId,status,dateLastModified,title,type,startDate,endDate,parentSourcedId,schoolYear'.split(','),
  ['year-25', '', '', '2024-25', 'schoolYear', '2024-08-01', '2025-08-01', '', '2025'],
  ['term-3', '', '', 'Summer term', 'term', '2025-04-01', '2025-07-01', 'year-25', '2025'],
  ['gp-may', '', '', 'May', 'gradingPeriod', '2025-05-01', '2025-06-01', 'term-3', '2025'],
];

const COURSES = [
  'sourcedId,status,dateLastModified,schoolYearSourcedId,title,courseCode,grades,orgSourcedId,subjects,subjectCodes'.split(
    ',',
  ),
  ['course-pe', '', '', 'year-25', 'Physical education 9', 'PE9', '09', 'org-bay', 'PE', ''],
];

const CLASSES = [
  'sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods'.split(
    ',',
  ),
  ['class-kelp', '', '', '9 Kelp', '09', 'course-pe', '', 'scheduled', '', 'org-quay', 'term-3', '', '', '3'],
  ['class-weed', '', '', '9 Weed', '09', 'course-pe', '', 'scheduled', '', 'org-quay', 'term-3', '', '', '4'],
];

const ENROLMENTS = [
  'sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate'.split(
    ',',
  ),
  ['e1', '', '', 'class-kelp', 'org-quay', 'k-0412', 'student', '', '2025-04-01', '2025-07-01'],
  ['e2', '', '', 'class-kelp', 'org-quay', 'k-0414', 'student', '', '', ''],
  ['e3', '', '', 'class-kelp', 'org-quay', 'k-0415', 'student', '', '', ''],
  ['e4', '', '', 'class-kelp', 'org-quay', 'k-0416', 'student', '', '', ''],
  ['e5', '', '', 'class-kelp', 'org-quay', 't-1', 'teacher', 'true', '', ''],
  ['e6', '', '', 'class-weed', 'org-quay', 'w-1', 'student', '', '', ''],
];

const NAMES = [
  ['k-0412', 'Odda', 'Quillfeather'],
  ['k-0414', 'Junip', 'Sandlark, the "Second"'],
  ['k-0415', 'Milo', '-Fogbottom'],
  ['k-0416', 'Ansa', 'Kelpington'],
  ['t-1', 'Runa', 'Skerry'],
  ['w-1', 'Pell', 'Weedon'],
] as const;

const heads = (version: '1.1' | '1.2', table: string) =>
  (TABLES[version][table] ?? []).map(({ name }) => name);

function fill(head: readonly string[], row: Readonly<Record<string, string>>): string[] {
  return head.map((name) => row[name] ?? '');
}

const buildUser = ([sourcedId, givenName, familyName]: (typeof NAMES)[number]) => ({
  sourcedId,
  enabledUser: 'true',
  username: `${sourcedId}@quay`,
  givenName,
  familyName,
  password: 'not-to-be-carried',
  phone: '555 0100',
});

/** A school's whole set of either version: two classes of one course, a teacher, a pupil of the other class. */
export function buildSchoolSet(version: '1.1' | '1.2'): RawSet {
  const users = heads(version, 'users');
  const isOld = version === '1.1';
  const tables: RawSet = {
    academicSessions: SESSIONS,
    classes: CLASSES,
    courses: COURSES,
    enrollments: ENROLMENTS,
    orgs: ORGS,
    users: [
      users,
      ...NAMES.map((name) =>
        fill(users, {
          ...buildUser(name),
          ...(isOld
            ? { orgSourcedIds: 'org-quay', role: name[0] === 't-1' ? 'teacher' : 'student' }
            : { primaryOrgSourcedId: 'org-quay' }),
        }),
      ),
    ],
    ...(isOld
      ? {}
      : {
          roles: [
            heads('1.2', 'roles'),
            ...NAMES.map(([id]) =>
              fill(heads('1.2', 'roles'), {
                sourcedId: `r-${id}`,
                userSourcedId: id,
                roleType: 'primary',
                role: id === 't-1' ? 'teacher' : 'student',
                orgSourcedId: 'org-quay',
              }),
            ),
          ],
        }),
  };
  const copies = Object.fromEntries(
    Object.entries(tables).map(([table, rows]) => [table, rows.map((row) => [...row])]),
  );
  return { manifest: buildManifest(version, Object.keys(copies)), ...copies };
}

/** A manifest of a version, with these tables in bulk. */
export function buildManifest(version: '1.1' | '1.2', present: readonly string[]): string[][] {
  return [
    ['propertyName', 'value'],
    ['manifest.version', '1.0'],
    ['oneroster.version', version],
    ...Object.keys(TABLES[version]).map((table) => [
      `file.${table}`,
      present.includes(table) ? 'bulk' : 'absent',
    ]),
  ];
}

/** RFC 4180. */
function quote(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** The set as an archive would be read. */
export function toBundle(set: RawSet, name = 'school.zip'): Bundle {
  const files = Object.entries(set).map(([table, rows]) => ({
    path: `${table}.csv`,
    text: rows.map((row) => `${row.map(quote).join(',')}\r\n`).join(''),
    packing: 'deflated' as const,
  }));
  return { name, isArchive: true, files };
}
