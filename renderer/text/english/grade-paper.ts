import type { OrderRule, Plan } from '../../../src-core/lesson/plan.ts';
import type { Override } from '../../../src-core/marking/decisions.ts';
import type { PupilScore } from '../../../src-core/marking/points.ts';
import type { SheetFlag } from '../../../src-core/printing/grade-input.ts';
import type { SheetState, SquadGrades } from '../../../src-core/printing/grade-pages.ts';
import type { GradeRow } from '../../../src-core/printing/grade-rows.ts';
import type { SheetKind } from '../../../src-core/printing/sheet-order.ts';
import { count } from './amounts.ts';
import { namePeriod } from './period.ts';
import { change, PRESENCE_WORDS, points, RULE_WORDS, SCORES } from './scores.ts';

/** What sheets about marked clips are called, and the files they are written to. */
export const SHEET_NAMES: Readonly<Record<SheetKind, { readonly title: string; readonly file: string }>> = {
  'grade-sheet': { title: 'Grade sheet', file: 'grade-sheet' },
  'squad-slips': { title: 'Slips for squads', file: 'squad-slips' },
  'pupil-slips': { title: 'Slips for pupils', file: 'pupil-slips' },
};

/** Everything that a grade sheet says of itself. */
export const GRADES = {
  title: 'Grade sheet',
  final: 'Final',
  finalLine: 'every mark confirmed, every flag settled',
  notFinal: 'Not final',
  page: (of: string, page: number, pages: number) => (pages === 1 ? of : `${of}, page ${page} of ${pages}`),
  period: (date: string, period: string) => `${date}, ${namePeriod(period)}`,
  squads: 'Squad',
  walkHead: 'Route, and under it as filmed',
  clips: 'clips',
  squadMarks: 'squad’s own',
  points: 'points',
  percent: '%',
  scale: 'scale',
  pupil: 'Pupil',
  squad: 'Squad',
  stations: 'Station, in the order filmed',
  stills: 'Stills: numbered, one a rep where the movement turns; else evenly spaced',
  noStills: 'Remarks',
  walk: 'Route and clips',
  noTime: 'no time',
  unknownStation: '?',
  flags: 'Flags, and how each was settled',
  noFlags: 'Flags: none.',
  teacher: 'Teacher',
  date: 'Date',
  rowExercise: (exercise: string, reps: number) => `${exercise}, ${count(reps, 'rep')}`,
  rowSlot: (slot: number | null, time: string | null, isPencilled: boolean) =>
    [slot === null ? null : `slot ${slot + 1}`, time, isPencilled ? 'unconfirmed' : null]
      .filter((part) => part !== null)
      .join(', '),
  unknownPlace: 'Nobody knows where',
  noMark: { absent: 'absent', excused: 'excused' },
  walkLegend:
    'Dashed in the upper line: no clip. Black in the lower: against the route. Dashed there: fills no slot.',
  inItalics: 'Marks in italics: not confirmed yet.',
  boxes:
    'Solid: the teacher’s answer; tick: met, cross: not met. Dashed, points in italics: proposed by the machine or unanswered, nobody stands behind it yet.',
  blurred: 'Stills are blurred; this file does not hold the sharp pictures.',
  leftOut: 'Stills were left out as asked.',
  onList:
    'No stills: this squad has somebody who is not to be filmed or shown, so none of its clips is pictured.',
  policy: 'Records of pupils: keep and pass on as your school’s policy says.',
} as const;

/** What is still open in the lesson, in a few words. */
export function wordState({ isFinal, unconfirmedClips, squadMarks, openFlags }: SheetState): string {
  if (isFinal) return GRADES.finalLine;
  const open = [
    ...(unconfirmedClips > 0 ? [`${count(unconfirmedClips, 'clip')} unconfirmed`] : []),
    ...(squadMarks > 0 ? [`${count(squadMarks, 'squad mark')} not given`] : []),
    ...(openFlags > 0 ? [`${count(openFlags, 'flag')} open`] : []),
  ];
  return open.length === 0 ? 'marks unconfirmed' : open.join(', ');
}

/** `Thu, 15 May 2025` for `2025-05-15`. */
export function wordDay(date: string): string {
  const day = new Date(`${date}T00:00:00Z`);
  const style = {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  } as const;
  return new Intl.DateTimeFormat('en-GB', style).format(day);
}

/** What the order rule of the lesson means for a clip out of order. */
export function wordRule(rule: OrderRule): string {
  return `Order rule: ${RULE_WORDS[rule].means}.`;
}

const ROLES: Readonly<Record<GradeRow['role'], string | null>> = {
  counts: null,
  retake: 'Another take of this slot counts.',
  'wrong-place': 'Filmed at the wrong place.',
  extra: 'It fits no slot.',
  unplaced: 'Not placed yet.',
  'no-clip': 'No clip.',
};

/** What there is to say of one line of a squad's page; empty where nothing is out of the ordinary. */
export function wordRow(row: GradeRow, isListTold: boolean): string {
  const isHidden = row.strip?.look === 'none' && row.strip.why === 'list' && !isListTold;
  return [
    ROLES[row.role],
    row.isBroken ? 'Out of order, against the route.' : null,
    row.override ? `${wordOverride(row.override)}.` : null,
    isHidden ? 'No stills: somebody in it may be on the do-not-film list.' : null,
  ]
    .filter((part) => part !== null)
    .join(' ');
}

function wordOverride({ change: what, reason }: Override): string {
  return SCORES.byHand(change(what), reason);
}

/** What explains a pupil's mark beside the squad's: late, by hand, without a mark. Empty: as the squad. */
export function wordPupil({ state, attendance, slots, notes, override }: PupilScore): string {
  return [
    ...(state === 'absent' || state === 'excused' ? [SCORES.noMark[state]] : []),
    ...(attendance.attendance === 'late' ? [SCORES.late(attendance.arrived, slots)] : []),
    ...notes.map((note) => PRESENCE_WORDS[note]),
    ...(override ? [wordOverride(override)] : []),
    ...(state === 'unconfirmed' ? ['not confirmed yet'] : []),
  ].join('; ');
}

/** The squad's own marks on one line: `Clips 5 of 7, Care of kit 2 of 2`. */
export function wordMarks({ score, marks }: Pick<SquadGrades, 'score' | 'marks'>): string {
  const slotsMax = score.slots.reduce((sum, { max }) => sum + max, 0);
  return [
    `Clips ${points(score.sum.clipPoints)} of ${points(slotsMax)}`,
    ...marks.map(({ label, decided, max }) =>
      decided === null ? `${label.text} not given yet` : `${label.text} ${points(decided)} of ${points(max)}`,
    ),
    ...(score.override ? [wordOverride(score.override)] : []),
  ].join(', ');
}

/** How a flag was settled, with the teacher's reason. */
export function wordSettled({ answer }: SheetFlag): string {
  if (answer === null) return 'Open';
  const word = answer.settled === 'kept' ? 'Kept' : 'Cleared';
  return answer.reason === null ? `${word}.` : `${word}: ${answer.reason}`;
}

/** The criteria with the numbers that stand over their boxes: `1 Right place, 2 Full reps`. */
export function wordCriteria(labels: readonly string[]): string {
  return labels.map((label, at) => `${at + 1} ${label}`).join(', ');
}

/** A time of the school's day without its seconds. */
export function wordTime(ms: number, { zone }: Plan): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(ms);
}

/** How many of a squad's flags are settled: under its name on the class page. */
export function wordFlagCount({
  open,
  settled,
}: {
  readonly open: number;
  readonly settled: number;
}): string {
  if (open + settled === 0) return 'no flag';
  const parts = [...(open > 0 ? [`${open} open`] : []), ...(settled > 0 ? [`${settled} settled`] : [])];
  return `${open + settled === 1 ? 'flag' : 'flags'}: ${parts.join(', ')}`;
}
