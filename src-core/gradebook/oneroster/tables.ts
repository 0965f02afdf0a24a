import { type Column, parseColumn } from './column.ts';

/** The versions that are written and checked; the manifest says 1.2 for the corrected binding 1.2.1 too. */
export type OneRosterVersion = '1.1' | '1.2';

/** A table's columns in the order in which they must stand; further columns may follow at the right. */
export type TableShape = readonly Column[];

const COMMON = ['sourcedId guid!', 'status status', 'dateLastModified date-time'];

function shape(...forms: readonly string[]): TableShape {
  return [...COMMON, ...forms].map(parseColumn);
}

const SHARED: Readonly<Record<string, TableShape>> = {
  academicSessions: shape(
    'title text!',
    'type one-of!:gradingPeriod|semester|schoolYear|term',
    'startDate date!',
    'endDate date!',
    'parentSourcedId guid:academicSessions',
    'schoolYear year!',
  ),
  orgs: shape(
    'name text!',
    'type one-of!:department|school|district|local|state|national',
    'identifier text',
    'parentSourcedId guid:orgs',
  ),
  courses: shape(
    'schoolYearSourcedId guid:academicSessions',
    'title text!',
    'courseCode text',
    'grades texts',
    'orgSourcedId guid!:orgs',
    'subjects texts',
    'subjectCodes texts',
  ),
  classes: shape(
    'title text!',
    'grades texts',
    'courseSourcedId guid!:courses',
    'classCode text',
    'classType one-of!:homeroom|scheduled',
    'location text',
    'schoolSourcedId guid!:orgs',
    'termSourcedIds guids!:academicSessions',
    'subjects texts',
    'subjectCodes texts',
    'periods texts',
  ),
  enrollments: shape(
    'classSourcedId guid!:classes',
    'schoolSourcedId guid!:orgs',
    'userSourcedId guid!:users',
    'role one-of!:administrator|proctor|student|teacher',
    'primary boolean',
    'beginDate date',
    'endDate date',
  ),
  // Of these, only the columns that all tables share are checked.
  classResources: shape(),
  courseResources: shape(),
  demographics: shape(),
  resources: shape(),
};

const USER_START = [
  'username text!',
  'userIds texts',
  'givenName text!',
  'familyName text!',
  'middleName text',
];
const USER_MIDDLE = [
  'identifier text',
  'email text',
  'sms text',
  'phone text',
  'agentSourcedIds guids',
  'grades texts',
  'password text',
];

const LINE_ITEM_START = [
  'title text!',
  'description text',
  'assignDate date!',
  'dueDate date!',
  'classSourcedId guid!:classes',
  'categorySourcedId guid!:categories',
];

const RESULT_START = [
  'lineItemSourcedId guid!:lineItems',
  'studentSourcedId guid!:users',
  'scoreStatus one-of!:exempt|fully graded|not submitted|partially graded|submitted',
];

/** 1EdTech OneRoster v1.2 CSV Binding, the tables of each file, as corrected in 1.2.1. */
const TABLES_1_2: Readonly<Record<string, TableShape>> = {
  ...SHARED,
  users: shape(
    'enabledUser boolean!',
    ...USER_START,
    ...USER_MIDDLE,
    'userMasterIdentifier text',
    'preferredGivenName text',
    'preferredMiddleName text',
    'preferredFamilyName text',
    'primaryOrgSourcedId guid:orgs',
    'pronouns text',
  ),
  roles: shape(
    'userSourcedId guid!:users',
    'roleType one-of!:primary|secondary',
    'role one-of!:aide|counselor|districtAdministrator|guardian|parent|principal|proctor|relative|siteAdministrator|student|systemAdministrator|teacher',
    'beginDate date',
    'endDate date',
    'orgSourcedId guid!:orgs',
    'userProfileSourcedId guid:userProfiles',
  ),
  categories: shape('title text!', 'weight integer'),
  lineItems: shape(
    ...LINE_ITEM_START,
    'academicSessionSourcedId guid!:academicSessions',
    'resultValueMin float',
    'resultValueMax float',
    'schoolSourcedId guid!:orgs',
  ),
  results: shape(
    ...RESULT_START,
    'score float',
    'scoreDate date!',
    'comment text',
    'textScore text',
    'classSourcedId guid:classes',
    'inProgress boolean',
    'incomplete boolean',
    'late boolean',
    'missing boolean',
  ),
  scoreScales: shape(
    'title text!',
    'type text!',
    'orgSourcedId guid!:orgs',
    'courseSourcedId guid!:courses',
    'classSourcedId guid!:classes',
    'scoreScaleValue score-scale!',
  ),
  lineItemScoreScales: shape(
    'title text',
    'lineItemSourcedId guid!:lineItems',
    'scoreScaleSourcedId guid!:scoreScales',
  ),
  resultScoreScales: shape(
    'title text',
    'resultSourcedId guid!:results',
    'scoreScaleSourcedId guid!:scoreScales',
  ),
  lineItemLearningObjectiveIds: shape(
    'lineItemSourcedId guid!:lineItems',
    'source one-of!:case|unknown',
    'learningObjectiveId text!',
  ),
  resultLearningObjectiveIds: shape(
    'resultSourcedId guid!:results',
    'source one-of!:case|unknown',
    'learningObjectiveId text!',
    'score float',
    'textScore text',
  ),
  userProfiles: shape(),
  userResources: shape(),
};

/** 1EdTech OneRoster v1.1, "Final CSV Tables" (1.1.1), by the v1.2 Binding's "Changes Between 1.1 and 1.2". */
const TABLES_1_1: Readonly<Record<string, TableShape>> = {
  ...SHARED,
  users: shape(
    'enabledUser boolean!',
    'orgSourcedIds guids!:orgs',
    'role one-of!:administrator|aide|guardian|parent|proctor|relative|student|teacher',
    ...USER_START,
    ...USER_MIDDLE,
  ),
  categories: shape('title text!'),
  lineItems: shape(
    ...LINE_ITEM_START,
    'gradingPeriodSourcedId guid!:academicSessions',
    'resultValueMin float!',
    'resultValueMax float!',
  ),
  results: shape(...RESULT_START, 'score float!', 'scoreDate date!', 'comment text'),
};

/** Every table of a version, by the name that the manifest uses; the file's is the same with `.csv`. */
export const TABLES: Readonly<Record<OneRosterVersion, Readonly<Record<string, TableShape>>>> = {
  '1.1': TABLES_1_1,
  '1.2': TABLES_1_2,
};

/** The text of 1.2 had one column more in users.csv than the corrected 1.2.1; both are read. */
export const FORMER_USER_COLUMN = { name: 'resourceSourcedIds', after: 'userMasterIdentifier' } as const;

/** What results cannot stand without when all rows are given (v1.2 CSV Binding, section 3, on dependencies). */
export const RESULTS_NEED: Readonly<Record<OneRosterVersion, readonly string[]>> = {
  '1.1': ['lineItems', 'categories', 'academicSessions', 'classes', 'courses', 'orgs', 'users'],
  '1.2': ['lineItems', 'categories', 'academicSessions', 'classes', 'courses', 'orgs', 'users', 'roles'],
};
