import type { TraceHint } from '../../../src-core/intake/other-squad.ts';
import type { ClockDoubt } from '../../../src-core/intake/tablet-times.ts';
import type { Flag, FlagCode } from '../../../src-core/matching/flag.ts';
import type { Advice, Names } from '../names.ts';
import { list, span } from './amounts.ts';
import { namePeriod } from './period.ts';

const TITLES: Readonly<Record<FlagCode, string>> = {
  'out-of-order': 'Out of order',
  missing: 'Missing',
  extra: 'Extra',
  retake: 'Retake',
  'wrong-place': 'Wrong place',
  unplaced: 'Not placed',
  'clock-doubtful': 'Doubtful clock',
  'outside-period': 'Outside the period',
  'handed-in-twice': 'Handed in twice',
  'other-squad': 'Another squad’s',
  'same-footage': 'Same footage twice',
  unreadable: 'Unreadable',
  'too-short': 'Too short',
};

/** A kind of flag in a word or two. */
export function nameFlag(code: FlagCode): string {
  return TITLES[code];
}

/** One flag in a word or two: its kind, but a photo is not called a clip that is too short. */
export function nameOneFlag(flag: Flag): string {
  return flag.code === 'too-short' && flag.durationSeconds === 0 ? 'A photo' : TITLES[flag.code];
}

const DOUBTS: Readonly<Record<ClockDoubt, string>> = {
  'no-date': 'It has no date that can be used',
  'date-only': 'Its name has a date but no time',
  'weak-source': 'Its date comes from a source that copying changes',
  'local-ambiguous': 'Its local time came twice, when the clocks went back',
  'export-date': 'Its date was written by an export, together with many others',
  'tablet-clock': 'The tablet’s clock fits no period of this day',
};

type Wordings = {
  readonly [Code in FlagCode]: (flag: Extract<Flag, { code: Code }>, names: Names) => Advice;
};

const slotName = (slot: number) => `slot ${slot + 1}`;

const WORDINGS: Wordings = {
  'out-of-order': ({ slot, station, against }, names) => ({
    what: `Station ${names.station(station)} (${slotName(slot)}) was filmed ${against.side} ${slotName(against.slot)}, against the route.`,
    todo: 'Keep the flag, or clear it if the swap was allowed.',
  }),
  missing: ({ slot, station, candidates }, names) => ({
    what: `No clip for ${slotName(slot)}, station ${names.station(station)}.`,
    todo:
      candidates.length > 0
        ? `Look at ${list(candidates.map(names.clip))}, or keep the flag.`
        : 'Ask for the clip while the tablet is here, or keep the flag.',
  }),
  extra: ({ station }, names) => ({
    what:
      station === null ? 'It fits no slot.' : `Station ${names.station(station)} is not left on this route.`,
    todo: 'Put it into a slot, or keep the flag to leave it out.',
  }),
  retake: ({ slot, counts }, names) => ({
    what: `A second take of ${slotName(slot)}; ${names.clip(counts)} counts.`,
    todo: 'Keep the flag, or put the other take into the slot.',
  }),
  'wrong-place': ({ slot, expected, station }, names) => ({
    what: `Filmed at ${names.station(station)} when ${slotName(slot)} asks for ${names.station(expected)}.`,
    todo: 'Keep the flag, or name the right station.',
  }),
  unplaced: ({ either }, names) => ({
    what: `It may be ${list(either.map((choice) => nameChoice(choice, names))).replace(/ and /, ' or ')}.`,
    todo: 'Name its station.',
  }),
  'clock-doubtful': ({ doubt, shiftSeconds, clip }) => ({
    what: `${DOUBTS[doubt]}.`,
    todo: getClockTodo(clip, shiftSeconds),
  }),
  'outside-period': ({ startMs, period }, names) => ({
    what: `Filmed at ${names.time(startMs)}, ${period === null ? 'in no period of this day' : `in ${namePeriod(period)}`}.`,
    todo: 'It is set aside. Clear the flag if it belongs to this lesson.',
  }),
  'handed-in-twice': ({ squad, alsoIn }, names) => ({
    what: `The same clip lies in the folders of ${list([squad, ...alsoIn].map(names.squad))}.`,
    todo: 'Say whose it is.',
  }),
  'other-squad': ({ likely, hints }, names) => ({
    what: `It looks like ${names.squad(likely)}’s: ${list(hints.map((hint) => nameHint(hint, names)))}.`,
    todo: `Give it to ${names.squad(likely)}, or clear the flag.`,
  }),
  'same-footage': ({ like, likeSquad }, names) => ({
    what: `It shows the same footage as ${names.clip(like)}${likeSquad === null ? '' : ` of ${names.squad(likeSquad)}`}.`,
    todo: 'Set one of the two aside, or clear the flag.',
  }),
  unreadable: ({ problem }) => ({
    what: `${UNREADABLE[problem] ?? 'It cannot be read'}.`,
    todo: 'Copy it again while the tablet is here, or keep the flag.',
  }),
  'too-short': ({ durationSeconds }) => ({
    what:
      durationSeconds === 0
        ? 'It is not a clip: it shows no movement.'
        : `Only ${span(durationSeconds)} long.`,
    todo: 'Keep the flag, or clear it to mark the clip all the same.',
  }),
};

function getClockTodo(clip: string | null, shiftSeconds: number | null): string {
  if (clip !== null) return 'It keeps the place its file number has. Look whether that is right.';
  if (shiftSeconds === null) return 'Set this tablet’s clock correction.';
  return `${shiftSeconds > 0 ? 'Adding' : 'Taking away'} ${span(shiftSeconds)} would fit. Set this tablet’s clock correction.`;
}

const UNREADABLE: Readonly<Record<string, string>> = {
  'media-empty': 'The file is empty',
  'media-unknown-kind': 'This is no video of a kind that Routemark reads, whatever its name says',
  'media-cut-short': 'The file ends in the middle',
  'media-no-index': 'The recording was never closed',
  'media-no-picture': 'It holds no picture',
  'decode-failed': 'No picture of it can be shown',
  'decode-cut-short': 'Its pictures end before its time',
};

function nameChoice(
  { slot, station }: { readonly slot: number | null; readonly station: string | null },
  names: Names,
): string {
  if (slot === null) return 'no slot at all';
  return `${slotName(slot)}${station === null ? '' : ` (${names.station(station)})`}`;
}

function nameHint(hint: TraceHint, names: Names): string {
  switch (hint.kind) {
    case 'recorder':
      return `filmed with ${hint.name}, as their clips are`;
    case 'overlap':
      return `this squad’s tablet was filming ${names.clip(hint.clip)} at the same time`;
    case 'fills-gap':
      return `they have no clip of station ${names.station(hint.station)}`;
    case 'pinnie':
      return `the pinnies in it are ${names.squad(hint.squad)}’s`;
    case 'name-series':
      return `its number is next to their ${names.clip(hint.neighbour)}’s`;
  }
}

/** What a flag says and what to do about it. */
export function describeFlag(flag: Flag, names: Names): Advice {
  const word = WORDINGS[flag.code] as (flag: Flag, names: Names) => Advice;
  return word(flag, names);
}
