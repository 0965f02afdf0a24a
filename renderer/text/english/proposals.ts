import type { ReasonCode, ReasonOf } from '../../../src-core/marking/proposal.ts';
import type { Names } from '../names.ts';
import { count as countOf } from './amounts.ts';

/** A number and its unit stay on one line. */
const NO_BREAK = '\u00a0';

const WORDINGS: { readonly [Code in ReasonCode]: (reason: ReasonOf<Code>, names: Names) => string } = {
  'card-shows-station': ({ station, atSeconds }) => `card ${station} read at ${clock(atSeconds)}`,
  'card-shows-other': ({ station, expected, atSeconds }) =>
    `card ${station} read at ${clock(atSeconds)}, not ${expected}`,
  'teacher-named-station': ({ station }) => `you named station ${station}`,
  'teacher-named-other': ({ station, expected }) => `you named station ${station}, not ${expected}`,
  'looks-like-clip': ({ station, like }, names) =>
    `no card read; looks like ${names.clip(like)} at ${names.station(station)}`,
  'looks-like-other': ({ station, expected, like }, names) =>
    `no card read; looks like ${names.clip(like)} at ${names.station(station)}, not ${expected}`,
  'only-slot-left': ({ station }, names) => `no card read; only ${names.station(station)} is left for it`,
  'tempo-fits': ({ cycleSeconds, usualSeconds }) =>
    `one movement every ${seconds(cycleSeconds)}, as usual here (${range(usualSeconds)})`,
  'tempo-differs': ({ cycleSeconds, usualSeconds }) =>
    `one movement every ${seconds(cycleSeconds)}, where ${range(usualSeconds)} is usual`,
  'repeats-at-place': ({ cycleSeconds }) => `a movement every ${seconds(cycleSeconds)} at the right place`,
  'no-repetition': () => 'no repeated movement seen',
  'reps-counted': nameReps,
  'reps-short': nameReps,
  'no-reps-seen': ({ prescribed }) => `none of ${prescribed} reps seen`,
  'moves-together': ({ lanes, lagSeconds }) => `${lanes} ${nameTogether(lagSeconds)}`,
  'some-move-together': ({ lanes, of, lagSeconds }) =>
    `${lanes} seen of ${of} who were there; all ${lanes} ${nameTogether(lagSeconds)}`,
  alternates: ({ lanes }) => `${lanes} move by turns, not at once`,
  'lane-misses-reps': ({ lane, reps, of }) => `number ${lane} from the left did ${reps} of ${of} reps`,
  'lane-off-beat': ({ lane, lagSeconds }) =>
    `number ${lane} from the left is ${seconds(Math.abs(lagSeconds))} ${lagSeconds < 0 ? 'ahead' : 'behind'}`,
  'lanes-unseen': ({ missing }) =>
    missing === 1 ? 'one performer is not seen moving' : `${missing} performers are not seen moving`,
};

function nameReps({ count, prescribed }: { readonly count: number; readonly prescribed: number }): string {
  if (count > prescribed) return `${countOf(count, 'rep')} counted, ${prescribed} asked for`;
  return `${count} of ${countOf(prescribed, 'rep')} counted`;
}

/** Below what one decimal can tell, a number would say `0.0 s`. */
const SAME_MOMENT_SECONDS = 0.05;

function nameTogether(lagSeconds: number): string {
  const off = Math.abs(lagSeconds);
  if (off < SAME_MOMENT_SECONDS) return 'move together, all at the same moment';
  return `move together, none more than ${seconds(off)} off`;
}

function seconds(value: number): string {
  return `${value.toFixed(1)}${NO_BREAK}s`;
}

function range([from, to]: readonly [number, number]): string {
  return `${from} to ${to}${NO_BREAK}s`;
}

function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Why something is proposed, in a few words. */
export function explainProposal(reason: ReasonOf<ReasonCode>, names: Names): string {
  const word = WORDINGS[reason.code] as (reason: ReasonOf<ReasonCode>, names: Names) => string;
  return word(reason, names);
}
