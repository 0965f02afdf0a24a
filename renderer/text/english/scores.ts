import type { OrderRule } from '../../../src-core/lesson/plan.ts';
import type { Attendance } from '../../../src-core/lesson/roster.ts';
import type { PointsChange } from '../../../src-core/marking/journal-event.ts';
import type { PresenceNote } from '../../../src-core/marking/presence.ts';
import { count, list } from './amounts.ts';

/** A number of points as the teacher writes it: `8`, `2.5`, `0.33`. */
export function points(amount: number): string {
  return new Intl.NumberFormat('en', { maximumFractionDigits: 2 }).format(amount).replace('-', '−');
}

/** As the teacher counts them: `slots 3 to 7`, `slots 1, 2 and 5`. */
function slots(indices: readonly number[]): string {
  const figures = indices.map((index) => index + 1).toSorted((one, other) => one - other);
  const [first, last] = [figures[0], figures.at(-1)];
  if (first === undefined || last === undefined) return 'no slot';
  if (figures.length === 1) return `slot ${first}`;
  return last - first + 1 === figures.length
    ? `slots ${first} to ${last}`
    : `slots ${list(figures.map(String))}`;
}

const ATTENDANCE: Readonly<Record<Attendance, string>> = {
  present: 'present',
  absent: 'absent',
  excused: 'excused',
  late: 'late',
};

/** What breaking the order costs: its name, and what that means. */
export const RULE_WORDS: Readonly<Record<OrderRule, { readonly name: string; readonly means: string }>> = {
  'void-route': { name: 'Whole route lost', means: 'one break and the route earns nothing' },
  'void-after': { name: 'Lost from the break on', means: 'slots from the first break earn nothing' },
  'void-clip': { name: 'Only those clips lost', means: 'clips out of order earn nothing' },
  report: { name: 'Only reported', means: 'order costs nothing' },
};

/** Why a late pupil is marked on the whole route all the same. */
export const PRESENCE_WORDS: Readonly<Record<PresenceNote, string>> = {
  'late-without-arrival': 'no time of arrival, so the whole route counts',
  'late-without-times': 'no clip has a time, so the whole route counts',
};

/** A change by hand in a few words: `+1`, `−2`, `set to 6`. */
export function change({ type, points: amount }: PointsChange): string {
  if (type === 'to') return `set to ${points(amount)}`;
  return amount < 0 ? `−${points(-amount)}` : `+${points(amount)}`;
}

/** All that Scores says: the table, explained sums, order rules, adjustments, cut points. */
export const SCORES = {
  sentence: (pupils: number, pencilled: number) =>
    `${count(pupils, 'pupil')}. ${
      pencilled === 0
        ? 'Every clip is inked.'
        : `${count(pencilled, 'clip')} ${pencilled === 1 ? 'is' : 'are'} still pencilled and count${pencilled === 1 ? 's' : ''} as ${pencilled === 1 ? 'it stands' : 'they stand'}.`
    }`,
  figure: 'Which figure stands out',
  figures: { points: 'Points', percent: 'Per cent', scale: 'Scale' },
  cutPoints: 'Cut points…',
  table: 'Scores by squad and pupil',
  squadColumn: 'Squad, pupils',
  slot: (slot: number) => `${slot + 1}`,
  slotLabel: (slot: number) => `Slot ${slot + 1}`,
  clips: 'Clips',
  points: 'Points',
  percent: '%',
  scale: 'Scale',
  open: (squad: string) => `${squad}, show its pupils`,
  close: (squad: string) => `${squad}, put its pupils away`,
  of: (max: number) => `/${points(max)}`,
  percentOf: (percent: number | null) => (percent === null ? '–' : `${percent} %`),
  none: '–',
  notGiven: '–',
  fullToRest: (marks: number) => `Full points to the rest (${marks})`,
  give: (label: string, squad: string) => `${label}, ${squad}`,
  box: (station: string, result: string, amount: number) => `${station}: ${result}, ${points(amount)}`,
  results: {
    earned: 'met',
    partly: 'partly met',
    unmet: 'not met',
    open: 'not answered yet',
    lost: 'out of order',
    'no-clip': 'no clip',
  },
  states: { inked: '', pencilled: ', pencilled', flagged: ', under a flag', 'no-clip': '' },
  asSquad: 'as the squad',
  attendance: ATTENDANCE,
  noMark: { absent: 'absent: no mark', excused: 'excused: no number' },
  markWord: { absent: 'abs.', excused: 'exc.' },
  late: (arrived: string | null, which: readonly number[]) =>
    arrived === null
      ? 'late'
      : `late, came at ${arrived}: ${slots(which)} ${which.length === 1 ? 'counts' : 'count'}`,
  byHand: (what: string, reason: string) => `${what} by hand: “${reason}”`,
  adjust: 'Adjust',
  adjustLabel: (name: string) => `Adjust ${name}`,
  whyLabel: (name: string) => `Why this sum: ${name}`,
  legend: {
    inked: 'inked',
    pencilled: 'pencilled',
    open: 'no answer yet',
    lost: 'lost to order',
    'no-clip': 'no clip',
    flagged: 'open flag',
  },

  rules: 'What breaking the order costs',
  ruleShown: (squads: readonly string[], others: number) =>
    squads.length === 0
      ? 'No squad has broken its order: every rule gives the same.'
      : `Shown for ${list(squads)}, ${squads.length === 1 ? 'the only squad with a break' : 'the squads with a break'}.${others === 0 ? '' : others === 1 ? ' The other one gets the same under every rule.' : ` The other ${others} get the same under every rule.`}`,
  ruleChanges: 'Choosing another rule changes the plan.',

  sumTitle: (amount: string, name: string) => `${amount}${SCORES.sumOfWhom(name)}`,
  sumOfWhom: (name: string): string => `, ${name}`,
  sumOf: (amount: number, max: number) => `${points(amount)} of ${points(max)}`,
  sumEmpty: 'Choose a squad or pupil to see where the points came from.',
  sum: 'Sum',
  parts: {
    came: (arrived: string, which: readonly number[]) => `Came at ${arrived}, so ${slots(which)}`,
    toEarn: (max: number) => `${points(max)} to earn`,
    earned: (stations: readonly string[]) => `${list(stations)} in full`,
    criteria: (station: string, unmet: readonly string[]) => `${station}: not ${list(unmet)}`,
    open: (station: string, open: readonly string[], unmet: readonly string[] = []) =>
      `${station}: ${unmet.length === 0 ? '' : `not ${list(unmet)}; `}${list(open)} not answered`,
    order: (station: string) => `${station} lost to the order rule`,
    noClip: (station: string) => `${station}: no clip`,
    criterion: (label: string, max: number, given: boolean) =>
      given ? `${label} (of ${points(max)})` : `${label}: not given yet (of ${points(max)})`,
    override: { clip: 'clip', squad: 'squad', pupil: 'pupil' },
    byHand: (what: string, whose: string, reason: string) => `${what} for the ${whose} by hand: ${reason}`,
  },
  pencilled: 'pencilled',

  adjustTitle: (name: string) => `Adjust ${name}`,
  attendanceHead: 'Attendance',
  arrived: 'Came at',
  arrivedHint: 'local time, such as 10:55',
  pointsHead: 'Points by hand',
  what: 'What',
  whole: 'the sum',
  clipOf: (station: string) => `the clip of ${station}`,
  by: 'add or take away',
  to: 'set to',
  amount: 'How many',
  reason: 'Reason',
  reasonHint: 'It stands beside the points wherever they are shown.',
  save: 'Decide',
  takeBack: 'Take the change back',
  backReason: 'taken back',

  cutTitle: 'Cut points of the scale',
  cutSentence: 'Best mark first. A pupil gets the first mark whose share is reached.',
  mark: 'Mark',
  fromPercent: 'From per cent',
  addStep: 'Mark',
  removeStep: (mark: string) => (mark === '' ? 'Take this mark out' : `Take mark “${mark}” out`),
  removeShort: 'Take out',
  saveScale: 'Save the scale',
  emptyTitle: 'No scores yet',
  empty: 'Points stand here as soon as the clips are read. Until then there is nothing to add up.',
  toBringIn: 'Go to Bring in',
} as const;
