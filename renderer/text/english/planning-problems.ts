import type { PlanningProblem } from '../../../src-core/lesson/planning-problem.ts';
import type { RosterImportProblem } from '../../../src-core/lesson/roster/roster-import-problem.ts';
import type { RouteProblem } from '../../../src-core/lesson/routes/route-problem.ts';
import type { GroupingRule, SquadsProblem } from '../../../src-core/lesson/squads/squads-problem.ts';
import { count, list, size } from './amounts.ts';
import { describeExpected } from './plan-fields.ts';
import type { Wordings } from './wordings.ts';

const DESIGNS = { cyclic: 'one round for all', balanced: 'a balanced rotation' } as const;
const nameLegs = (legs: readonly (readonly [string, string])[]) =>
  list(legs.map(([from, to]) => `${from} to ${to}`));
const nameRules = (rules: readonly GroupingRule[]) =>
  list(rules.map(({ kind, pupils }) => `${list(pupils)} ${kind}`));

const routeProblems: Wordings<RouteProblem['code']> = {
  'routes-without-squads': () => ({ what: 'There is no squad to walk.', todo: 'Form squads first.' }),
  'routes-without-stations': () => ({
    what: 'There is no station to walk to.',
    todo: 'Add stations, or leave fewer out.',
  }),
  'routes-too-many-squads': ({ squads, stations }) => ({
    what: `${count(squads, 'squad')} cannot walk ${count(stations, 'station')} without two of them at one.`,
    todo: 'Form fewer squads, or add stations: a twin of a station needs its own code and card.',
  }),
  'routes-start-unknown': ({ squad, station }, names) => ({
    what: `${names.squad(squad)} is to begin at ${station}, where no route goes.`,
    todo: 'Let the squad begin elsewhere.',
  }),
  'routes-start-twice': ({ station, squads }, names) => ({
    what: `${list(squads.map(names.squad))} are both to begin at ${station}.`,
    todo: 'Let one of them begin elsewhere.',
  }),
  'routes-legs-needed': ({ design, legs }) => ({
    what: `There are no routes for ${DESIGNS[design]} without ${legs.length === 1 ? 'the leg' : 'any of the legs'} ${nameLegs(legs)}.`,
    todo: 'Allow one of these legs, or choose the other kind of rotation.',
  }),
  'routes-not-found': ({ design, legs }) => ({
    what: `No routes for ${DESIGNS[design]} were found without ${nameLegs(legs)}; whether there are any is not known.`,
    todo: 'Allow a leg, draw again or choose the other kind of rotation.',
  }),
};

const squadsProblems: Wordings<SquadsProblem['code']> = {
  'squads-without-pupils': () => ({
    what: 'The roster names no pupil.',
    todo: 'Take in a class list first.',
  }),
  'squads-too-many': ({ squads, pupils }) => ({
    what: `${count(pupils, 'pupil')} cannot fill ${count(squads, 'squad')}.`,
    todo: 'Form fewer squads.',
  }),
  'squads-rules-contradict': ({ pupils, together }) => ({
    what: `${list(pupils)} are to be apart, and the rules keep ${list(together)} together.`,
    todo: 'Take one of the rules back.',
  }),
  'squads-rules-too-many': ({ rules }) => ({
    what: `No squads keep all of these rules: ${nameRules(rules)}.`,
    todo: 'Take one of them back, or form another number of squads.',
  }),
  'squads-not-found': () => ({
    what: 'No squads that keep every rule were found; whether there are any is not known.',
    todo: 'Take a rule back, or draw again.',
  }),
  'squads-pupil-unknown': ({ pupil }) => ({
    what: `A rule for squads names ${pupil}, who is not in the roster; it was passed over.`,
    todo: 'Take the rule back, or correct the id.',
  }),
  'squads-uneven': ({ smallest, largest }) => ({
    what: `Squads have between ${smallest} and ${count(largest, 'pupil')}, because pupils are to stay together.`,
    todo: null,
  }),
};

const importProblems: Wordings<RosterImportProblem['code']> = {
  'import-unreadable': ({ name }) => ({
    what: `${name} is no class list that can be read.`,
    todo: 'Hand over a CSV file with a heading line, or a OneRoster export as a zip file or a folder.',
  }),
  'import-too-large': ({ name, limitBytes }) => ({
    what: `${name} is larger than any class list (${size(limitBytes)}).`,
    todo: 'Look whether it is the right file.',
  }),
  'import-not-utf8': ({ name }) => ({
    what: `${name}: letters are lost, for the file is not in UTF-8. Names would come out wrong.`,
    todo: 'Save it once more as “CSV UTF-8”.',
  }),
  'import-column-missing': ({ column, heads }) => ({
    what: `No column was taken for “${column}”. The columns are ${list(heads)}.`,
    todo: 'Say which column it is.',
  }),
  'import-line-incomplete': ({ line }) => ({
    what: `Line ${line} of the class list lacks an id or a name; it was left out.`,
    todo: 'Complete it where the list comes from.',
  }),
  'import-id-twice': ({ line, id }) => ({
    what: `Line ${line} of the class list has the id ${id} again; it was left out.`,
    todo: 'Look which of the two lines is right.',
  }),
  'import-version-unknown': ({ version }) => ({
    what: `The export says that it is OneRoster ${version}; 1.1 and 1.2 are read.`,
    todo: 'Export it in one of these.',
  }),
  'import-file-missing': ({ name }) => ({
    what: `The export has no ${name}.`,
    todo: 'Export classes, enrollments and users together.',
  }),
  'import-file-column-missing': ({ name, column }) => ({
    what: `The export’s ${name} has no column “${column}”.`,
    todo: 'Export it once more; names of columns must stay as they are.',
  }),
  'import-class-open': ({ classes }) => ({
    what: `The export holds ${count(classes, 'class', 'classes')}.`,
    todo: 'Choose the class.',
  }),
  'import-class-unknown': ({ classId }) => ({
    what: `The export has no class ${classId}.`,
    todo: 'Choose one of its classes.',
  }),
  'import-empty': () => ({
    what: 'The class list names no pupil. Nothing was changed.',
    todo: 'Look whether it is the right class.',
  }),
  'import-user-missing': ({ id }) => ({
    what: `The class holds ${id}, whom the export’s users.csv does not name; left out.`,
    todo: 'Add this pupil to the roster by hand, or export anew.',
  }),
};

/** Words for what goes wrong while a lesson is being planned. */
export const planningProblems: Wordings<PlanningProblem['code']> = {
  ...routeProblems,
  ...squadsProblems,
  ...importProblems,
  'standards-column-missing': ({ column }) => ({
    what: `The list of standards has no column “${column}”.`,
    todo: 'Its first line must name the columns: code,text,source.',
  }),
  'standards-line-incomplete': ({ line }) => ({
    what: `Line ${line} of the standards lacks a code, a text or a source; it was left out.`,
    todo: 'Complete it.',
  }),
  'standards-code-bad': ({ line, value }) => ({
    what: `Line ${line} of the standards: “${value}” makes no code; it was left out.`,
    todo: 'Use letters and digits, 32 at most.',
  }),
  'standards-code-twice': ({ line, value }) => ({
    what: `Line ${line} of the standards has the code ${value} again; it was left out.`,
    todo: 'Give each standard its own code.',
  }),
  'library-not-json': ({ line, column }) => ({
    what: `The library of exercises stops making sense at line ${line}, column ${column}. Nothing was taken over.`,
    todo: 'Look there for a comma, quote or bracket that is missing or one too many.',
  }),
  'library-not-ours': () => ({
    what: 'This file is no library of exercises. Nothing was taken over.',
    todo: 'Such a file begins with "format": "routemark-exercises".',
  }),
  'library-newer': ({ version, newest }) => ({
    what: `The library was written by a newer Routemark (format ${version}; this one reads up to ${newest}).`,
    todo: 'Install the newer version. Nothing was changed.',
  }),
  'library-field': ({ path, expected, detail }) => ({
    what: `The library, ${path === '' ? 'as a whole' : path}: expected ${describeExpected(expected, detail)}. Nothing was taken over.`,
    todo: 'Correct it and take it in again.',
  }),
  'library-code-twice': ({ path, value }) => ({
    what: `The library, ${path}: the code “${value}” is used twice. Nothing was taken over.`,
    todo: 'Give each exercise its own code.',
  }),
  'lesson-folder-exists': ({ path }) => ({
    what: `${path} is there already. Nothing was written.`,
    todo: 'Choose another name.',
  }),
  'version-unknown': ({ version }) => ({
    what: `The lesson keeps no earlier plan “${version}”.`,
    todo: 'Choose one of those that are listed.',
  }),
};
