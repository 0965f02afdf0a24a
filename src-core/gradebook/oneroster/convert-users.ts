import { splitList } from './check-value.ts';
import type { Row } from './read-table.ts';
import type { ClassRows } from './school-set.ts';
import type { OneRosterVersion } from './tables.ts';

/** Users and roles as a version has them. */
export interface UserRows {
  readonly users: readonly Row[];
  /** Empty in 1.1, where a user's row holds the role. */
  readonly roles: readonly Row[];
}

/**
 * The marked pupils in either version, whichever the school's set was of (v1.2 CSV Binding, "Changes Between 1.1
 * and 1.2": `orgSourcedIds` and `role` became rows of roles.csv). Only what the version requires is carried over,
 * with grades: addresses, telephone numbers and passwords have no business in a set of marks.
 */
export function convertUsers(rows: ClassRows, version: OneRosterVersion): UserRows {
  const orgIds = new Set(rows.orgs.map(({ sourcedId = '' }) => sourcedId));
  const places = rows.users.map((user) => ({ user, orgs: findOrgs(rows, user, orgIds) }));
  if (version === '1.1') {
    return {
      users: places.map(({ user, orgs }) => ({
        ...getEssence(user),
        orgSourcedIds: orgs.join(','),
        role: 'student',
      })),
      roles: [],
    };
  }
  return {
    users: places.map(({ user, orgs }) => ({ ...getEssence(user), primaryOrgSourcedId: orgs[0] ?? '' })),
    roles: places.flatMap(({ user, orgs }) => findRoles(rows, user) ?? buildRoles(user, orgs)),
  };
}

function getEssence({ sourcedId = '', enabledUser = '', username = '', ...row }: Row): Row {
  const { givenName = '', familyName = '', grades = '' } = row;
  return { sourcedId, enabledUser, username, givenName, familyName, grades };
}

/** A pupil's schools, as far as they are in the set; the class's where none is told. */
function findOrgs(rows: ClassRows, user: Row, known: ReadonlySet<string>): readonly string[] {
  const told = [
    user.primaryOrgSourcedId ?? '',
    ...splitList(user.orgSourcedIds ?? ''),
    ...rows.roles
      .filter(({ userSourcedId }) => userSourcedId === user.sourcedId)
      .map(({ orgSourcedId = '' }) => orgSourcedId),
  ].filter((id) => known.has(id));
  return told.length > 0 ? [...new Set(told)] : [rows.class.schoolSourcedId ?? ''];
}

function findRoles({ roles }: ClassRows, user: Row): readonly Row[] | null {
  const own = roles.filter(({ userSourcedId }) => userSourcedId === user.sourcedId);
  // Profiles are not carried over, so nothing may point to them.
  return own.length > 0 ? own.map((role) => ({ ...role, userProfileSourcedId: '' })) : null;
}

/** An id of our own for a row that 1.1 did not have: made of the two it joins, the same each time. */
function buildRoles({ sourcedId = '' }: Row, orgs: readonly string[]): readonly Row[] {
  return orgs.map((orgSourcedId, at) => ({
    sourcedId: `${sourcedId}-at-${orgSourcedId}`,
    userSourcedId: sourcedId,
    roleType: at === 0 ? 'primary' : 'secondary',
    role: 'student',
    orgSourcedId,
  }));
}
