import type { PlanProblem } from '../../../src-core/lesson/lesson-problem.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { count } from './amounts.ts';

type Code = PlanProblem['code'];

/** What a plan is checked for, said when it holds; it does not where a problem with one of the codes is there. */
export const CHECKS: readonly { readonly holds: string; readonly codes: readonly Code[] }[] = [
  { holds: 'No two squads reach a station in the same slot.', codes: ['plan-squads-meet'] },
  {
    holds: 'Every route names stations that are there, each once.',
    codes: ['plan-station-unknown', 'plan-station-repeated', 'plan-start-differs'],
  },
  {
    holds: 'Periods follow one another without overlap.',
    codes: ['plan-period-reversed', 'plan-periods-overlap', 'plan-period-unknown'],
  },
  {
    holds: 'Squads, pinnies and tablets cannot be mixed up.',
    codes: ['plan-name-ambiguous', 'plan-code-twice'],
  },
];

/** All that Plan says: stations, rotation, rules as sentences, what was checked. */
export const PLAN = {
  sentence: (pupils: number, squads: number, slots: number) =>
    `${count(pupils, 'pupil')} in ${count(squads, 'squad')}, ${count(slots, 'slot')} each.`,
  classClock: 'Class clock',
  overview: 'Stations and rotation',
  stations: 'Stations',
  stationsSentence: (stations: number) => `${count(stations, 'station')} on the field`,
  place: 'Place, and the clue to the next',
  exercise: 'Exercise, and how a rep is counted',
  reps: 'Reps',
  care: 'With care',
  counting: { cycle: 'one per cycle', side: 'one per side' },
  tempo: (from: number, to: number) => `${from}–${to} s`,
  rotation: 'Rotation',
  rotationCaption: 'Which squad is where in which slot',
  slot: 'Slot',
  free: 'free',
  noneFree: '–',
  rules: 'Rules of this lesson',
  rulesHint: 'Press an underlined word to change it.',
  order: ['When the order is broken:', '.'],
  orderRules: {
    'void-route': 'the whole route is lost',
    'void-after': 'everything from the break on is lost',
    'void-clip': 'only the clips out of order are lost',
    report: 'it is only reported',
  },
  orderLabel: 'What breaking the order costs',
  retake: ['Of two takes of one slot the', 'one counts.'],
  retakes: { first: 'first', last: 'last' },
  retakeLabel: 'Which take counts',
  award: ['A clip earns', 'when every criterion is met.'],
  awardSum: 'A clip earns the points of the criteria it meets.',
  awardLabel: 'Points of a clip',
  pointsWord: (amount: number) => count(amount, 'point'),
  together: ['Pupils are together while nobody is more than', 'behind.'],
  togetherLabel: 'Seconds behind that still count as together',
  doubt: ['A clip’s time is doubted when it is less sure than', '.'],
  doubtLabel: 'Seconds of uncertainty that are doubted',
  grace: ['A period still owns a clip', 'before its bell and after its end.'],
  graceLabel: 'Minutes around a period',
  short: ['A film shorter than', 'is flagged.'],
  shortLabel: 'Seconds of the shortest film',
  seconds: (amount: number) => `${amount} s`,
  minutes: (amount: number) => `${amount} min`,
  periods: 'Periods of the day',
  lessonPeriod: ['This lesson is', ', local time of', '.'],
  lessonPeriodLabel: 'Period of this lesson',
  zoneLabel: 'Time zone of the school',
  period: ['from', 'to'],
  startLabel: (code: string) => `Start of ${code}`,
  endLabel: (code: string) => `End of ${code}`,
  rubric: 'Rubric',
  needed: 'needed',
  points: (amount: number) => count(amount, 'point'),
  perSquad: (label: string) => `${label}, per squad`,
  upTo: (amount: number) => `0 – ${amount}`,
  checks: 'Checked',
  checking: 'Checking the plan…',
  notSaved: 'Not changed',
  change: (label: string, now: string) => `${label}: ${now}. Change it`,
  outOfRange: (from: number, to: number) => `Between ${from} and ${to}.`,
} as const;

/** Names of the rules in the order of strictness, for choosing one. */
export const ORDER_CHOICES = Object.entries(PLAN.orderRules) as readonly (readonly [
  Plan['orderRule'],
  string,
])[];
