import type { PlanProblem, ReadinessProblem } from '../../../src-core/lesson/lesson-problem.ts';
import { count, exactSpan } from './amounts.ts';
import { nameOrderRule } from './circuit.ts';
import { namePeriod } from './period.ts';

type Code = (PlanProblem | ReadinessProblem)['code'];

/** What a plan is checked for, said when it holds; it does not where a problem with one of the codes is there. */
export const CHECKS: readonly { readonly holds: string; readonly codes: readonly Code[] }[] = [
  {
    holds: 'No two squads reach a station in the same slot.',
    codes: ['plan-squads-meet', 'plan-too-many-squads'],
  },
  {
    holds: 'Every route names stations that are there, each once.',
    codes: ['plan-station-unknown', 'plan-station-repeated', 'plan-start-differs'],
  },
  {
    holds: 'Routes keep to fixed starts, stations left out and forbidden legs.',
    codes: ['plan-leg-forbidden', 'plan-left-out-visited', 'plan-start-not-kept'],
  },
  {
    holds: 'Every station’s work fits its slot.',
    codes: ['plan-timing-too-long', 'plan-reps-too-many', 'plan-slot-too-short'],
  },
  {
    holds: 'Every text fits its place on paper.',
    codes: ['plan-text-too-long', 'plan-word-too-long'],
  },
  { holds: 'Every place on a route has its clue, or none has one.', codes: ['plan-clue-missing'] },
  {
    holds: 'Periods follow one another without overlap.',
    codes: ['plan-period-reversed', 'plan-periods-overlap', 'plan-period-unknown'],
  },
  {
    holds: 'Squads, pinnies and tablets cannot be mixed up.',
    codes: ['plan-name-ambiguous', 'plan-code-twice', 'plan-pinnies-alike'],
  },
];

/** Words of the words: what an underlined word says of itself, and why what was typed cannot be. */
export const WORDS = {
  change: (label: string, now: string) => `${label}: ${now}. Change it`,
  add: (label: string, hint: string) => `${label}: ${hint}. Add it`,
  nothing: 'add',
  needed: 'Something must stand here.',
  unreadable: 'This is not complete yet.',
  whole: 'A whole number.',
  outOfRange: (from: number, to: number) => `Between ${from} and ${to}.`,
} as const;

/** The head of Plan, its sheets' names, and what is said of saving. */
export const PLAN = {
  facts: ['for', 'of', 'on', ',', '.'],
  titleLabel: 'Title of the lesson',
  classLabel: 'Class',
  schoolLabel: 'School',
  dateLabel: 'Day of the lesson',
  periodLabel: 'Period of the day',
  amounts: (pupils: number, squads: number, slots: number) =>
    `${count(pupils, 'pupil')} in ${count(squads, 'squad')}, ${count(slots, 'slot')} each.`,
  classClock: 'Class clock',
  left: 'Stations, squads and briefing',
  right: 'Rotation, checks and rules',
  checks: 'Checked',
  checking: 'Checking the plan…',
  goThere: 'Go there',
  notSaved: 'Not saved yet',
  kept: 'What you typed stands on the sheet and is kept until you mend it or let it go.',
  tryAgain: 'Save it now',
  letGo: 'Back to what is saved',
} as const;

/** Rules of the lesson, tolerances, periods and timing as sentences. */
export const RULES = {
  head: 'Rules of this lesson',
  hint: 'Press an underlined word, or type at it, to change it.',
  order: ['When the order is broken:', '.'],
  orderLabel: 'What breaking the order costs',
  retake: ['Of two takes of one slot the', 'one counts.'],
  retakes: { first: 'first', last: 'last' },
  retakeLabel: 'Which take counts',
  together: ['Pupils are together while nobody is more than', 'behind.'],
  togetherLabel: 'Seconds behind that still count as together',
  doubt: ['A clip’s time is doubted when it is less sure than', '.'],
  doubtLabel: 'Seconds of uncertainty that are doubted',
  grace: ['A period still owns a clip', 'before its bell and after its end.'],
  graceLabel: 'Minutes around a period',
  short: ['A clip shorter than', 'is flagged.'],
  shortLabel: 'Seconds of the shortest clip',
  seconds: (amount: number) => `${amount} s`,
  minutes: (amount: number) => `${amount} min`,
  cards: ['Its cards carry the code', ', printing', '.'],
  codeLabel: 'Code on the cards',
  revisionLabel: 'Printing of the cards',
  periods: 'Time',
  lessonPeriod: ['This lesson is', ', local time of', '.'],
  lessonPeriodLabel: 'Period of this lesson',
  zoneLabel: 'Time zone of the school',
  timing: ['It begins with', 'of warm-up and ends with', 'for clearing up;', '.'],
  slotTime: (slots: number, seconds: number) =>
    `${count(slots, 'slot')} of ${exactSpan(seconds)} are left for work`,
  noTime: 'no time is left for work',
  warmUpLabel: 'Minutes of warm-up',
  clearUpLabel: 'Minutes for clearing up',
  period: ['from', 'to'],
  periodName: namePeriod,
  startLabel: (code: string) => `Start of ${namePeriod(code)}`,
  endLabel: (code: string) => `End of ${namePeriod(code)}`,
  addPeriod: 'Period',
  removePeriod: (code: string) => `Take ${namePeriod(code)} out`,
} as const;

/** Names of the rules in the order of strictness, for choosing one. */
export const ORDER_CHOICES = (['void-route', 'void-after', 'void-clip', 'report'] as const).map(
  (rule) => [rule, nameOrderRule(rule)] as const,
);
