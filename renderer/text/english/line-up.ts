import type { LineUpState } from '../line-up-state.ts';
import { count, span } from './amounts.ts';

/** What the teacher reads at Line up. */
export const LINE_UP = {
  sentence: (clips: number, squads: number) =>
    `${count(clips, 'clip')} against ${count(squads, 'route')}. Where two lines cross, a clip is out of order.`,
  emptySentence: 'The routes are drawn. Clips take their places as soon as they are brought in.',
  readingSentence: (done: number, total: number) =>
    `Cards are being read, ${done} of ${total} clips. Places may still change.`,
  layout: 'Lay out',
  bySquad: 'By squad',
  byPlace: 'By place',
  howMuch: 'Time shown',
  whole: 'Whole period',
  quarter: '15 min',
  oneSlot: 'One slot',
  clock: ['Class', 'clock'],
  column: (squad: string, filled: number, slots: number) =>
    `${squad}, ${filled} of ${count(slots, 'slot')} ${slots === 1 ? 'has' : 'have'} a clip`,
  loom: 'Routes and clips on one clock',
  route: 'Route',
  clips: 'Clips in time',
  missingSlot: (slot: number, station: string) => `slot ${slot + 1}, ${station}, no clip`,
  slot: (slot: number, station: string) => `slot ${slot + 1}, ${station}`,
  noTime: 'no time',
  ticketStation: (station: string) => `station ${station}`,
  unknownStation: '?',
  clockFilm: '–',
  meeting: (one: string, other: string, station: string, time: string) =>
    `${one} and ${other} were both at ${station} at ${time}`,
  notSeen: (squad: string) => `${squad} not seen`,
  notThen: (squad: string) => `${squad} at another time`,
  place: (station: string, clips: number) => `${station}, ${count(clips, 'clip')}`,
  side: 'Flags',
  flags: (amount: number) => (amount === 0 ? 'No open flag' : count(amount, 'flag')),
  ofClips: (clips: number) => `of ${count(clips, 'clip')}`,
  next: 'next',
  calm: 'Every route is in order, or you have said how it was.',
  noClips: 'Flags come with the clips.',
  soon: 'Flags come when the cards are read.',
  toReview: 'To Review',
  toBringIn: (amount: number) => `${amount} more ${amount === 1 ? 'waits' : 'wait'} at Bring in`,
  settled: 'Settled',
  openAgain: 'Open again',
  kept: 'kept',
  cleared: 'cleared',
  slotsOf: (slot: number) => `slot ${slot + 1}`,
  reason: 'Reason, if any',
  keep: 'Keep the flag',
  keepOf: {
    'out-of-order': 'Keep the flag',
    missing: 'It is missing',
    extra: 'Leave it out',
    retake: 'The other take counts',
    'wrong-place': 'Keep the flag',
    'too-short': 'Keep the flag',
  } as Readonly<Record<string, string>>,
  clear: 'Clear the flag',
  clearOf: { 'out-of-order': 'Allow this swap', 'too-short': 'Mark it all the same' } as Readonly<
    Record<string, string>
  >,
  itIsClip: (name: string) => `It is ${name}`,
  put: (slot: number | null, station: string | null) =>
    slot === null ? 'It fits no slot' : `Slot ${slot + 1}${station === null ? '' : `, ${station}`}`,
  takeCounts: 'This take counts',
  chooseStation: 'Choose its station…',
  move: 'Put it elsewhere…',
  clockWrong: 'Clock is wrong…',
  evidence: (squad: string, station: string, time: string) =>
    `Still of ${squad} at station ${station}, ${time}`,
  ticketHead: (station: string | null) => (station === null ? 'Station unknown' : `Station ${station}`),
  stationFrom: {
    teacher: 'You named the station.',
    card: 'The card was read in the clip.',
    inferred: 'Inferred from the walk; no card was read.',
    nothing: 'Nobody knows where it was filmed.',
  },
  notSearched: 'Its pictures have not been searched for cards yet.',
  doubtful: (seconds: number) => `Its time may be off by ${span(seconds)}.`,
  moveTitle: (clip: string) => `Where does ${clip} go?`,
  moveHint: 'Press the slot’s number, or choose.',
  slotChoice: (slot: number, station: string) => `${slot + 1} · ${station}`,
  toSquad: (squad: string) => `To ${squad}`,
  setAside: 'Set aside',
  byItself: 'As found',
  stationTitle: (clip: string) => `Where was ${clip} filmed?`,
  stationHint: 'Compare with clips whose place is sure.',
  thisClip: 'This clip',
  knownAt: (squad: string) => `${squad}, there for sure`,
  noneKnown: 'no sure clip of it',
  onCard: 'card read',
  now: 'now',
} as const;

const STATES: Readonly<Record<LineUpState, string>> = {
  'in-order': 'in order',
  'out-of-order': 'out of order',
  missing: 'missing',
  extra: 'extra',
  retake: 'replaced by a retake',
  'wrong-place': 'wrong place',
  unplaced: 'not placed',
  'too-short': 'too short',
  photo: 'a photo',
  'set-aside': 'set aside',
  'clock-film': 'film of the class clock',
  waiting: 'waits: whose is it?',
};

/** A clip as one would speak of it, not by its file: `Amber’s clip of 10:57`, or by its number in the order filmed. */
export function nameClipByTime(
  squad: string | null,
  { time, position }: { readonly time: string | null; readonly position: number | null },
): string {
  const whose = squad === null ? 'the' : `${squad}’s`;
  if (time !== null) return `${whose} clip of ${time}`;
  return position === null
    ? `this clip${squad === null ? '' : ` of ${squad}’s`}`
    : `${whose} clip ${position + 1}`;
}

/** How a ticket stands, for its name. */
export function nameLineUpState(state: LineUpState, isSettled: boolean): string {
  return isSettled ? `${STATES[state]}, settled` : STATES[state];
}
