import type { PlanProblem, RosterProblem } from '../../../src-core/lesson/lesson-problem.ts';
import { list } from './amounts.ts';
import { namePeriod } from './period.ts';
import { describeExpected } from './plan-fields.ts';
import { readinessProblems } from './readiness-problems.ts';
import type { Wordings } from './wordings.ts';

const planProblems: Wordings<PlanProblem['code']> = {
  'plan-not-json': ({ line, column }) => ({
    what: `plan.json stops making sense at line ${line}, column ${column}.`,
    todo: 'Look there for a comma, quote or bracket that is missing or one too many.',
  }),
  'plan-not-ours': () => ({
    what: 'plan.json is not a lesson plan.',
    todo: 'Choose the folder that holds the lesson; its plan.json begins with "format": "routemark-plan".',
  }),
  'plan-newer': ({ version, newest }) => ({
    what: `plan.json was written by a newer Routemark (format ${version}; this one reads up to ${newest}).`,
    todo: 'Install the newer version. Nothing was changed.',
  }),
  'plan-field': ({ path, expected, detail }, names) => ({
    what: `${names.planPlace(path)}: expected ${describeExpected(expected, detail)}.`,
    todo: expected === 'unknown-key' ? 'Take it out, or correct its spelling.' : 'Correct it there.',
  }),
  'plan-zone-unknown': ({ path, zone }, names) => ({
    what: `${names.planPlace(path)}: “${zone}” is no time zone.`,
    todo: 'Write the school’s zone as Region/City, such as America/Halifax.',
  }),
  'plan-code-twice': ({ path, value }, names) => ({
    what: `${names.planPlace(path)}: the code “${value}” is used twice.`,
    todo: 'Give each its own code.',
  }),
  'plan-name-ambiguous': ({ path, other, name }, names) => ({
    what: `${names.planPlace(path)}: “${name}” could also mean the squad “${other}”.`,
    todo: 'Give each squad its own name, pinnie colour and tablet label.',
  }),
  'plan-station-unknown': ({ path, station }, names) => ({
    what: `${names.planPlace(path)}: there is no station “${station}”.`,
    todo: 'Add the station, or take it off the route.',
  }),
  'plan-station-repeated': ({ path, station }, names) => ({
    what: `${names.planPlace(path)}: the route comes to station “${station}” a second time.`,
    todo: 'Let each route visit a station once.',
  }),
  'plan-start-differs': ({ path, start, first }, names) => ({
    what: `${names.planPlace(path)}: the squad is to start at ${start}, but its route begins with ${first}.`,
    todo: 'Make the two agree.',
  }),
  'plan-squads-meet': ({ path, station, slot, squads }, names) => ({
    what: `${names.planPlace(path)}: ${list(squads.map(names.squad))} reach station ${station} in the same slot (${slot + 1}).`,
    todo: 'Turn one of the routes, or let the squads share the station knowingly.',
  }),
  'plan-period-unknown': ({ path, period }, names) => ({
    what: `${names.planPlace(path)}: there is no period “${period}”.`,
    todo: 'Add it under periods, or name another.',
  }),
  'plan-period-reversed': ({ path, start, end }, names) => ({
    what: `${names.planPlace(path)}: it ends at ${end} and starts at ${start}.`,
    todo: 'Correct the times.',
  }),
  'plan-periods-overlap': ({ path, other }, names) => ({
    what: `${names.planPlace(path)}: it overlaps with ${namePeriod(other)}.`,
    todo: 'Correct the times.',
  }),
  'plan-range-reversed': ({ path }, names) => ({
    what: `${names.planPlace(path)}: the longest is shorter than the shortest.`,
    todo: 'Write the shortest first.',
  }),
  'plan-scale-order': ({ path }, names) => ({
    what: `${names.planPlace(path)}: it is not below the step before it.`,
    todo: 'Write the best mark first, then downwards.',
  }),
  ...readinessProblems,
};

const LINE = (line: number) => `roster.csv, line ${line}`;

const rosterProblems: Wordings<RosterProblem['code']> = {
  'roster-column-missing': ({ column }) => ({
    what: `roster.csv has no column “${column}”.`,
    todo: 'Its first line must name the columns: id,given,family,squad.',
  }),
  'roster-not-utf8': ({ line }) => ({
    what: `${LINE(line)}: letters are lost, for the file is not in UTF-8. Names would come out wrong.`,
    todo: 'Save it once more as “CSV UTF-8”.',
  }),
  'roster-empty': () => ({ what: 'roster.csv names no pupil.', todo: 'Add a line for each pupil.' }),
  'roster-line-uneven': ({ line }) => ({
    what: `${LINE(line)}: it has more or fewer fields than the first line.`,
    todo: 'Look for a comma too many, or put names with commas in quotes.',
  }),
  'roster-quote-open': ({ line }) => ({
    what: `${LINE(line)}: a quote (") is opened there and never closed, so nobody can be read.`,
    todo: 'Close it, or take it out.',
  }),
  'roster-field-empty': ({ line, column }) => ({
    what: `${LINE(line)}: no ${column}. The pupil was left out.`,
    todo: 'Fill it in.',
  }),
  'roster-id-twice': ({ line, id, firstLine }) => ({
    what: `${LINE(line)}: the id ${id} stands in line ${firstLine} already. The second was left out.`,
    todo: 'Give each pupil their own id.',
  }),
  'roster-squad-unknown': ({ line, squad }) => ({
    what: `${LINE(line)}: no squad goes by “${squad}”. The pupil was left out.`,
    todo: 'Write a squad’s code, name, pinnie colour or tablet.',
  }),
  'roster-attendance-unknown': ({ line, value }) => ({
    what: `${LINE(line)}: “${value}” is no attendance; taken as present.`,
    todo: 'Write present, absent, excused or late. No reasons belong here.',
  }),
  'roster-arrival-missing': ({ line }) => ({
    what: `${LINE(line)}: late, but not since when; the whole route counts.`,
    todo: 'Write the time of arrival under “arrived”, such as 10:55.',
  }),
  'roster-arrival-invalid': ({ line, value }) => ({
    what: `${LINE(line)}: “${value}” is no time; the whole route counts.`,
    todo: 'Write it as 10:55.',
  }),
  'roster-arrival-outside': ({ line, value, from, to }) => ({
    what: `${LINE(line)}: ${value} is not within the lesson, which is from ${from} to ${to}.`,
    todo: 'Look whether it is a slip: slots before it do not count for the pupil.',
  }),
  'roster-stills-unknown': ({ line, value }) => ({
    what: `${LINE(line)}: “${value}” under “stills”; taken as no.`,
    todo: 'Write yes or no.',
  }),
  'roster-consent-unknown': ({ line, value }) => ({
    what: `${LINE(line)}: “${value}” under “consent”; taken as no.`,
    todo: 'Write yes or no, and no reason.',
  }),
};

/** Words for what is wrong with a plan or a roster. */
export const lessonProblems: Wordings<(PlanProblem | RosterProblem)['code']> = {
  ...planProblems,
  ...rosterProblems,
};
