import { findClip, getShownAnswers } from '../app/find-clip.ts';
import type { GradedLesson } from '../app/graded-lesson.ts';
import { parsePerformers } from '../app/parse-performers.ts';
import { parseCorrection } from '../lesson/clock-correction.ts';
import { ATTENDANCES } from '../lesson/roster.ts';
import type { JournalAct, OverrideTarget } from '../marking/journal-event.ts';

/** The options of `mark`, as typed. */
export interface DecisionOptions {
  readonly clip?: string;
  readonly flag?: string;
  readonly squad?: string;
  readonly pupil?: string;
  readonly station?: string;
  readonly giveTo?: string;
  readonly slot?: string;
  readonly met?: string;
  readonly notMet?: string;
  readonly undecided?: string;
  readonly confirm?: boolean;
  readonly note?: string;
  readonly performers?: string;
  readonly keep?: boolean;
  readonly clear?: boolean;
  readonly reopen?: boolean;
  readonly earns?: string;
  readonly clock?: string;
  readonly attendance?: string;
  readonly arrived?: string;
  readonly points?: string;
  readonly reason?: string;
}

/** The ways to record other than by a subject of its own, and who does, as typed. */
export interface WayOptions {
  readonly undo?: boolean;
  readonly redo?: boolean;
  /** File with one decision a line, or `-` for the standard input. */
  readonly list?: string;
  /** Another journal of the same lesson. */
  readonly merge?: string;
  /** Who decides. */
  readonly by?: string;
  /** Records a second marking under this name, blind to the first and in a journal of its own. */
  readonly second?: string;
}

/** Something typed that cannot be a decision; the message says what to type instead. */
export class DecisionError extends Error {}

const SUBJECTS = ['clip', 'flag', 'squad', 'pupil'] as const;
const WAYS = ['undo', 'redo', 'list', 'merge'] as const;

/** What to type for performers. */
export const PERFORMERS_FORM =
  'Performers are a number from 1 to 6, or their places from the left edge (0) to the right (1), such as 0.2,0.5,0.8.';

/** The word that takes a decision back. */
const BACK = 'back';

/**
 * The decisions that the options of `mark` mean, in the order they are to be recorded. Throws
 * {@link DecisionError} where they make no sense.
 */
export function buildActs(options: DecisionOptions, graded: GradedLesson): readonly JournalAct[] {
  if (SUBJECTS.filter((one) => options[one] !== undefined).length !== 1)
    throw new DecisionError('Name one of --clip, --flag, --squad or --pupil.');
  refuseStrayOptions(options);
  const acts = [
    ...buildClipActs(options, graded),
    ...buildFlagActs(options, graded),
    ...buildSquadActs(options, graded),
    ...buildPupilActs(options, graded),
  ];
  if (acts.length === 0) throw new DecisionError('Say what is decided; see routemark mark --help.');
  return acts;
}

/** What may be said of each subject; anything else typed with it would be dropped without a word. */
const OPTIONS_OF = {
  clip: [
    'station',
    'giveTo',
    'slot',
    'performers',
    'met',
    'notMet',
    'undecided',
    'confirm',
    'note',
    'points',
    'reason',
  ],
  flag: ['keep', 'clear', 'reopen', 'reason'],
  squad: ['earns', 'clock', 'points', 'reason'],
  pupil: ['attendance', 'arrived', 'points', 'reason'],
} as const satisfies Readonly<Record<string, readonly (keyof DecisionOptions)[]>>;

function refuseStrayOptions(options: DecisionOptions): void {
  const subject = SUBJECTS.find((one) => options[one] !== undefined) ?? 'clip';
  const fitting: readonly (keyof DecisionOptions)[] = OPTIONS_OF[subject];
  const stray = Object.values(OPTIONS_OF)
    .flat()
    .find((option) => options[option] !== undefined && !fitting.includes(option));
  if (stray) throw new DecisionError(`${nameOption(stray)} says nothing about a ${subject}.`);
  if (options.reason !== undefined && options.points === undefined && subject !== 'flag') {
    throw new DecisionError('--reason goes with --points or --flag.');
  }
  if (options.arrived !== undefined && options.attendance !== 'late') {
    throw new DecisionError('--arrived goes with --attendance late.');
  }
}

/** Refuses what cannot go together, for one of them would be dropped without a word. */
export function refuseClashes(options: DecisionOptions & WayOptions): void {
  const [way, other] = WAYS.filter((one) => options[one] !== undefined);
  const said = [...SUBJECTS, ...Object.values(OPTIONS_OF).flat()].find((one) => options[one] !== undefined);
  const beside = other ?? said;
  if (way && beside) throw new DecisionError(`${nameOption(way)} goes without ${nameOption(beside)}.`);
  if (options.second !== undefined && options.by !== undefined)
    throw new DecisionError('--second says who decides; leave --by out.');
}

function nameOption(option: string): string {
  return `--${option.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}

function buildClipActs(options: DecisionOptions, graded: GradedLesson): JournalAct[] {
  if (options.clip === undefined) return [];
  const reading = findClip(graded, options.clip);
  if (!reading)
    throw new DecisionError(`No one clip is meant by “${options.clip}”. Give its path or its id.`);
  const clip = reading.id;
  const { plan } = graded.lesson;
  const acts: JournalAct[] = [];
  if (options.station !== undefined) {
    const station = orBack(options.station, (code) => pick(code, plan.stations, 'station'));
    acts.push({ kind: 'station-set', clip, station });
  }
  if (options.giveTo !== undefined) {
    const squad = orBack(options.giveTo, (code) => pick(code, plan.squads, 'squad'));
    acts.push({ kind: 'clip-moved', clip, squad });
  }
  if (options.slot !== undefined) {
    const slots = Math.max(...plan.squads.map(({ route }) => route.length));
    const slot = orBack(options.slot, (text) => readSlot(text, slots));
    acts.push({ kind: 'clip-placed', clip, slot });
  }
  if (options.performers !== undefined) {
    acts.push({ kind: 'lanes-set', clip, lanes: orBack(options.performers, readPerformers) });
  }
  if (options.confirm) acts.push({ kind: 'clip-confirmed', clip, answers: getAnswers(graded, clip) });
  acts.push(...buildAnswerActs(options, clip, graded));
  if (options.note !== undefined)
    acts.push({ kind: 'clip-noted', clip, text: orBack(options.note, (text) => text) });
  if (options.points !== undefined) acts.push(buildOverride({ type: 'clip', clip }, options));
  return acts;
}

function getAnswers(graded: GradedLesson, clip: string): Record<string, boolean> {
  const shown = getShownAnswers(graded, clip);
  if (!shown) throw new DecisionError('This clip fills no slot, so there is nothing to confirm.');
  const open = [...shown].filter(([, met]) => met === null).map(([criterion]) => criterion);
  if (open.length > 0) {
    throw new DecisionError(`No answer yet for ${open.join(', ')}: use --met or --not-met first.`);
  }
  return Object.fromEntries([...shown].map(([criterion, met]) => [criterion, met === true]));
}

function buildAnswerActs(options: DecisionOptions, clip: string, graded: GradedLesson): JournalAct[] {
  const criteria = graded.lesson.plan.rubric.clip;
  const answers: readonly [string | undefined, boolean | null][] = [
    [options.met, true],
    [options.notMet, false],
    [options.undecided, null],
  ];
  const said = answers.flatMap(([codes, met]) =>
    splitList(codes).map((code) => ({ criterion: pick(code, criteria, 'criterion'), met })),
  );
  const twice = said.find(({ criterion }, at) => said.findIndex((one) => one.criterion === criterion) < at);
  if (twice) throw new DecisionError(`“${twice.criterion}” stands there twice: give it one answer.`);
  return said.map((answer): JournalAct => ({ kind: 'criterion-marked', clip, ...answer }));
}

function buildFlagActs(options: DecisionOptions, graded: GradedLesson): JournalAct[] {
  const { flag } = options;
  if (flag === undefined) return [];
  if (!graded.flags.some(({ key }) => key === flag)) {
    throw new DecisionError(`There is no flag “${flag}”. routemark grade lists the flags with their keys.`);
  }
  const answers = [options.keep && 'kept', options.clear && 'cleared', options.reopen && BACK].filter(
    Boolean,
  );
  if (answers.length !== 1) throw new DecisionError('Say one of --keep, --clear or --reopen.');
  const settled = options.reopen ? null : options.keep ? 'kept' : 'cleared';
  return [{ kind: 'flag-settled', flag, settled, reason: options.reason ?? null }];
}

function buildSquadActs(options: DecisionOptions, graded: GradedLesson): JournalAct[] {
  if (options.squad === undefined) return [];
  const { plan } = graded.lesson;
  const squad = pick(options.squad, plan.squads, 'squad');
  const acts = splitList(options.earns).map((mark): JournalAct => {
    const [code = '', points = ''] = mark.split('=');
    const criterion = pick(code, plan.rubric.squad, 'squad criterion');
    const most = plan.rubric.squad.find((one) => one.code === criterion)?.maxPoints ?? 0;
    return {
      kind: 'squad-marked',
      squad,
      criterion,
      points: orBack(points, (text) => readEarned(text, most)),
    };
  });
  if (options.clock !== undefined) {
    acts.push({ kind: 'clock-set', squad, correctionSeconds: orBack(options.clock, readCorrection) });
  }
  if (options.points !== undefined) acts.push(buildOverride({ type: 'squad', squad }, options));
  return acts;
}

function buildPupilActs(options: DecisionOptions, graded: GradedLesson): JournalAct[] {
  if (options.pupil === undefined) return [];
  const codes = graded.lesson.pupils.map(({ id }) => ({ code: id }));
  const pupil = pick(options.pupil, codes, 'pupil');
  const acts: JournalAct[] = [];
  if (options.attendance !== undefined) {
    const attendance = orBack(options.attendance, readAttendance);
    acts.push({ kind: 'attendance-set', pupil, attendance, arrived: options.arrived ?? null });
  }
  if (options.points !== undefined) acts.push(buildOverride({ type: 'pupil', pupil }, options));
  return acts;
}

function buildOverride(of: OverrideTarget, { points = '', reason }: DecisionOptions): JournalAct {
  if (!reason) throw new DecisionError('A change of points needs a --reason.');
  const change = orBack(points, (text) => {
    const type = text.startsWith('=') ? ('to' as const) : ('by' as const);
    return { type, points: readNumber(text.replace(/^=/, '')) };
  });
  return { kind: 'points-overridden', of, change, reason };
}

function orBack<Value>(text: string, read: (text: string) => Value): Value | null {
  return text === BACK ? null : read(text);
}

function pick(code: string, items: readonly { readonly code: string }[], what: string): string {
  if (items.some((item) => item.code === code)) return code;
  const known = items.map((item) => item.code).join(', ');
  throw new DecisionError(`There is no ${what} “${code}”. Known: ${known}.`);
}

function splitList(text: string | undefined): string[] {
  return (text ?? '')
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');
}

function readSlot(text: string, slots: number): number | 'none' {
  if (text === 'none') return 'none';
  const slot = Number(text);
  if (Number.isInteger(slot) && slot >= 1 && slot <= slots) return slot - 1;
  throw new DecisionError(`“${text}” is no slot. Slots go from 1 to ${slots}; “none” sets the clip aside.`);
}

function readNumber(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new DecisionError(`“${text}” is no number. Write +1, -1 or =2.`);
}

function readEarned(text: string, most: number): number {
  const points = Number(text);
  if (text.trim() !== '' && points >= 0 && points <= most) return points;
  throw new DecisionError(`“${text}” cannot be earned. Write 0 to ${most}, such as care=${most}.`);
}

function readPerformers(text: string): number | number[] {
  const found = parsePerformers(text);
  if (found === null) throw new DecisionError(`“${text}” says nothing about performers. ${PERFORMERS_FORM}`);
  return found;
}

function readCorrection(text: string): number {
  const seconds = parseCorrection(text);
  if (seconds !== null) return seconds;
  throw new DecisionError(`“${text}” is no time span. Write minutes and seconds, such as 37:00 or -0:04.`);
}

function readAttendance(text: string): (typeof ATTENDANCES)[number] {
  const found = ATTENDANCES.find((attendance) => attendance === text);
  if (found) return found;
  throw new DecisionError(`“${text}” is no attendance. Write ${ATTENDANCES.join(', ')}.`);
}
