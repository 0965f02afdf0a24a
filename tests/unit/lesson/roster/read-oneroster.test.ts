import { describe, expect, test } from 'vitest';
import { readOneRoster } from '../../../../src-core/lesson/roster/read-oneroster.ts';

// Heads in the order of the 1EdTech OneRoster CSV Binding: version 1.2, tables “classes.csv”, “enrollments.csv”,
// “users.csv” and “roles.csv” of the roster files; version 1.1, “OneRoster v1.1: Final CSV Tables”.
const CLASSES =
  'sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods';
const ENROLLMENTS =
  'sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate';
const USERS_11 =
  'sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password';
const USERS_12 =
  'sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,resourceSourcedIds,preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns';
const USERS_121 = USERS_12.replace('resourceSourcedIds,', '');
const ROLES =
  'sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,userProfileSourcedId';

/** A line under these heads; what is not named is empty. */
function line(heads: string, fields: Readonly<Record<string, string>>): string {
  return heads
    .split(',')
    .map((head) => (fields[head]?.includes(',') ? `"${fields[head]}"` : (fields[head] ?? '')))
    .join(',');
}

function file(heads: string, ...rows: readonly Readonly<Record<string, string>>[]): string {
  return [heads, ...rows.map((row) => line(heads, row))].map((text) => `${text}\r\n`).join('');
}

type Enrolment = Readonly<Record<string, string>>;

function build(
  version: string,
  users: string,
  over: Readonly<Record<string, string>> = {},
  more: readonly Enrolment[] = [],
) {
  const enrolled = (user: string, rest: Enrolment = {}) => ({
    sourcedId: `e-${user}`,
    classSourcedId: 'c-1',
    userSourcedId: user,
    role: 'student',
    ...rest,
  });
  return new Map(
    Object.entries({
      'manifest.csv': `propertyName,value\r\nmanifest.version,1.0\r\noneroster.version,${version}\r\nfile.users,bulk\r\n`,
      'classes.csv': file(
        CLASSES,
        { sourcedId: 'c-1', title: '9 Kelp, PE', classType: 'scheduled' },
        { sourcedId: 'c-2', title: '8 Dulse' },
      ),
      'enrollments.csv': file(
        ENROLLMENTS,
        enrolled('u-1'),
        enrolled('u-2'),
        enrolled('t-1', { role: 'teacher', primary: 'true' }),
        ...more.map((row) => enrolled(row.userSourcedId ?? '', row)),
      ),
      'users.csv': file(
        users,
        { sourcedId: 'u-1', enabledUser: 'true', username: 'ada', givenName: 'Ada', familyName: 'Marsh' },
        {
          sourcedId: 'u-2',
          enabledUser: 'true',
          username: 'bo',
          givenName: 'Robert',
          familyName: 'Reed',
          preferredGivenName: 'Bo',
        },
        { sourcedId: 't-1', enabledUser: 'true', username: 'ferrow', givenName: 'M.', familyName: 'Ferrow' },
      ),
      'roles.csv': file(ROLES, {
        sourcedId: 'r-1',
        userSourcedId: 'u-1',
        roleType: 'primary',
        role: 'student',
      }),
      ...over,
    }),
  );
}

const DAY = '2025-05-15';
const read = (files: ReadonlyMap<string, string>) => {
  const set = readOneRoster(files, DAY);
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  return set.value;
};
const given = (files: ReadonlyMap<string, string>) =>
  read(files)
    .pupilsOf.get('c-1')
    ?.pupils.map((pupil) => pupil.given);

describe('a OneRoster export', () => {
  test.each([
    ['1.1', USERS_11, ['Ada', 'Robert']],
    ['1.2', USERS_12, ['Ada', 'Bo']],
    ['1.2', USERS_121, ['Ada', 'Bo']],
  ])('of version %s gives its classes and their pupils, teachers left out', (version, users, names) => {
    const files = build(version, users);
    expect(read(files)).toMatchObject({
      version,
      classes: [
        { id: 'c-2', title: '8 Dulse', pupils: 0 },
        { id: 'c-1', title: '9 Kelp, PE', pupils: 2 },
      ],
    });
    expect(given(files)).toEqual(names);
  });

  test('may begin its files with a byte-order mark (1.2 CSV Binding, section 3)', () => {
    const marked = new Map([...build('1.2', USERS_121)].map(([name, text]) => [name, `\uFEFF${text}`]));
    expect(given(marked)).toEqual(['Ada', 'Bo']);
  });

  test('counts an enrolment up to the day before its end, and none that is to be deleted', () => {
    const of = (row: Enrolment) =>
      given(build('1.1', USERS_11, {}, [{ userSourcedId: 't-1', ...row }]))?.length;
    expect(of({ endDate: '2025-05-16' })).toBe(3);
    expect(of({ endDate: DAY })).toBe(2);
    expect(of({ beginDate: '2025-05-16' })).toBe(2);
    expect(of({ status: 'tobedeleted', dateLastModified: '2025-05-01T00:00:00.000Z' })).toBe(2);
  });

  test('names those whom it enrols without saying who they are', () => {
    const files = build('1.1', USERS_11, {}, [{ userSourcedId: 'u-9' }]);
    expect(read(files).pupilsOf.get('c-1')?.missing).toEqual(['u-9']);
  });

  test.each([
    [
      'of another version',
      { 'manifest.csv': 'propertyName,value\noneroster.version,2.0\n' },
      'import-version-unknown',
    ],
    [
      'whose columns are written otherwise (names are case-sensitive)',
      { 'users.csv': 'sourcedid,givenName,familyName\n' },
      'import-file-column-missing',
    ],
    [
      'with letters lost',
      { 'users.csv': 'sourcedId,givenName,familyName\nu,Zo\uFFFD,M\n' },
      'import-not-utf8',
    ],
  ])('%s is refused', (_, over, code) => {
    const set = readOneRoster(build('1.2', USERS_12, over), DAY);
    expect(set.problems.map((problem) => problem.code)).toEqual([code]);
  });

  test('without its enrolments is refused', () => {
    const files = build('1.2', USERS_12);
    files.delete('enrollments.csv');
    expect(readOneRoster(files, DAY).problems).toEqual([
      { code: 'import-file-missing', name: 'enrollments.csv' },
    ]);
  });
});
