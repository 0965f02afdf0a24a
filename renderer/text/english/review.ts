import { count, list } from './amounts.ts';

/** A moment of a film: `0:21.4`. */
export function moment(seconds: number): string {
  const tenths = Math.round(Math.max(0, seconds) * 10);
  const minutes = Math.floor(tenths / 600);
  const rest = (tenths - minutes * 600) / 10;
  return `${minutes}:${rest.toFixed(1).padStart(4, '0')}`;
}

/** The same without tenths: `0:21`. */
export function wholeMoment(seconds: number): string {
  const whole = Math.floor(Math.max(0, seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** All that Review says: the clip on the desk, its film, the class card, the score sheet. */
export const REVIEW = {
  orders: { flagged: 'Flagged first', stations: 'Station by station', squads: 'Squad by squad' },
  order: 'Order of the clips',
  hideNames: 'Hide names',
  at: 'at',
  slot: (slot: number, of: number) => ({ before: 'slot', figure: String(slot + 1), after: `of ${of}` }),
  filmed: 'filmed',
  notTimed: 'time not known',
  inOrder: 'in order',
  orderWords: { late: 'out of order', place: 'wrong place' },
  give: (seconds: number) => (Number.isFinite(seconds) ? `±${Math.round(seconds)} s` : '± unknown'),

  countSheet: 'Count sheet: one line per rep, time runs down',
  stillsSheet: 'Stills of the clip, time runs down',
  rep: 'Rep',
  atTurn: 'at the turn',
  still: 'Still',
  evenly: 'evenly spaced',
  motion: 'Motion',
  upDown: 'up · down',
  unison: 'Unison',
  isOn: (seconds: number) => Math.abs(seconds) < 0.05,
  lag: (seconds: number): string =>
    REVIEW.isOn(seconds) ? 'on' : `${seconds > 0 ? '+' : '−'}${Math.abs(seconds).toFixed(1)}`,
  /** Where there is no room for the nought: `+.1`. */
  lagShort: (seconds: number): string => REVIEW.lag(seconds).replace(/^(.)0\./, '$1.'),
  secondsOff: 's off',
  allOn: 'all on',
  repLabel: (number: number, at: number) => `Rep ${number}, at ${wholeMoment(at)}. Play this rep`,
  stillLabel: (at: number) => `Still at ${moment(at)}. Play from here`,
  folded: { before: 'setting up, folded', after: 'walking off, folded' },
  without: {
    unwatched: {
      head: 'Not watched yet',
      text: 'The stills are evenly spaced. Motion and reps are drawn here as soon as the clip has been watched; you can mark it already.',
    },
    'none-found': {
      head: 'No reps found',
      text: 'The clip was watched and no steady movement shows. The stills are evenly spaced: count as you watch.',
    },
    'in-vain': {
      head: 'Not a picture could be decoded',
      text: 'So nothing was counted. Mark it by what you see.',
    },
    'no-length': { head: 'Nothing to count in', text: 'A photo, or a film whose length is not known.' },
    'no-lanes': {
      head: 'Lanes could not be told apart',
      text: 'Pupils stand behind each other, or one moves alone. Say below how many there are, or the unison itself.',
    },
    alone: {
      head: 'One performer, you say',
      text: 'One alone keeps no time with others. Unison is yours to say.',
    },
  },
  performers: 'Performers',
  performersLabel: 'Performers in the picture',
  performerCount: (performers: number) => count(performers, 'performer'),
  performerPlace: (number: number) => `Place of performer ${number}`,
  performerPlaces: 'Places of the performers, from the left edge to the right',
  estimateAgain: 'As estimated',
  traceWords: (reps: number, from: number, to: number) =>
    `Motion trace: ${count(reps, 'rep')} between ${wholeMoment(from)} and ${wholeMoment(to)}`,
  lanesWords: (performers: number, off: readonly number[]) =>
    `${count(performers, 'performer')}; ${off.length === 0 ? 'all on the beat' : `off the beat: ${list(off.map(String))}`}`,
  unisonWords: (score: number) => `Unison ${score.toFixed(2)} of 1`,

  player: 'Player',
  filmWords: (station: string) => `Film of ${station}`,
  photoWords: (station: string) => `Photo handed in for ${station}`,
  photo: 'A photo, not a film: it shows no reps.',
  frameBack: 'Frame back',
  frameOn: 'Frame on',
  playPause: 'Play or pause',
  of: (length: number) => `of ${wholeMoment(length)}`,
  loop: (number: number | null) => (number === null ? 'Loop' : `Rep ${number}`),
  loopLabel: (number: number | null) => (number === null ? 'Loop this stretch' : `Loop rep ${number}`),
  speed: 'Speed',
  speeds: { 0.25: '¼', 0.5: '½', 1: '1', 2: '2', 4: '4' } as Readonly<Record<number, string>>,
  speedLabel: (rate: number) => `${rate} times`,
  makingProxy:
    'This window cannot play the film as the tablet wrote it. A copy that it can play is being made.',
  proxyLeft: (seconds: number) => `About ${Math.max(1, Math.round(seconds))} s left.`,
  filmFailed: 'This clip does not open',
  filmSafe: 'The original was not touched. You can still mark it by what you saw.',
  tryAgain: 'Try again',

  classCard: 'Class card',
  cardCaption: 'Class card: every clip of the lesson by station and squad',
  counts: (inked: number, left: number, missing: number) =>
    [`${inked} inked`, `${left} left`, ...(missing > 0 ? [`${missing} missing`] : [])].join(' · '),
  left: 'left',
  noneLeft: '–',
  hole: (squad: string, station: string, state: string) => `${squad}, station ${station}: ${state}`,
  holes: {
    inked: 'inked',
    pencilled: 'to be marked',
    flagged: 'flagged',
    gone: 'no clip',
    none: 'not on its route',
    now: 'on the desk now',
  },
  compareAt: (station: string) => `Compare at ${station}`,
  next: (now: string | null) => (now === null ? 'This is the last clip to be marked.' : `Next: ${now}.`),
  nextOne: (station: string, squad: string) => `${squad} at ${station}`,

  scoreSheet: 'Score sheet',
  keysHint: 'change',
  noteHint: 'note',
  yes: 'Yes',
  no: 'No',
  byMachine: ', pencilled by the machine',
  confidence: (share: number) => `${Math.round(share * 100)} %`,
  noProposal: {
    place: 'No card read; nothing says where this is. Yours to say.',
    exercise: 'Nothing speaks for or against it. Yours to say.',
    reps: 'Reps were not counted. Yours to say.',
    together: 'Unison was not measured. Yours to say.',
    lanes: 'Lanes could not be told apart. Yours to say.',
    alone: 'One performer alone keeps no time with others. Yours to say.',
    measuring: 'Being measured.',
    photo: 'A photo shows no movement; yours to say.',
    judgement: 'Yours alone to say.',
  },
  notWatched: {
    no: 'The clip was not watched yet.',
    'in-vain': 'Not a picture could be decoded. Yours to say.',
  },
  watching: (done: number, total: number) => `Watching clips: ${done} of ${total}`,
  watchingLeft: (seconds: number) =>
    seconds < 60 ? `about ${Math.max(1, seconds)} s left` : `about ${Math.ceil(seconds / 60)} min left`,
  unwatched: (clips: number) => `${count(clips, 'clip')} not watched`,
  watch: 'Watch them',
  watchByItself: 'from now on without being asked',
  stopWatching: 'Stop',
  overruled: 'The machine’s suggestion was the other one',
  earns: (points: number, max: number) => `${points} of ${max}`,
  earnsOpen: (max: number) => `? of ${max}`,
  because: (labels: readonly string[]) => `because of ${list(labels)}`,
  openWords: (labels: readonly string[]) =>
    `${list(labels)} ${labels.length === 1 ? 'is' : 'are'} yours to say`,
  lost: 'lost to the order rule',
  inked: 'inked',
  pencilled: 'pencilled',
  note: 'Note',
  notePlaceholder: 'Note for the grade sheet…',
  confirm: 'Confirm, next clip',
  goOn: 'Next clip',
  back: 'Back to the clip before',
  yesToRest: 'Yes to the rest',
  noToRest: 'No to the rest',
  answerFirst: (label: string) => `${label} has no answer yet`,
  flagHead: 'Flag',
  keep: 'Keep the flag',
  clear: 'Clear the flag',

  compare: 'Compare',
  compareTitle: (station: string) => `${station}, side by side`,
  compareStart: {
    reps: 'Started together on their first rep.',
    some: 'Started on their first rep; where none is known, at the beginning.',
    zero: 'Started together at their beginning: first reps are not known.',
  },
  noCount: '–',
  reps: (reps: number) => (reps === 1 ? 'rep' : 'reps'),
  unisonShort: (score: number | null) => (score === null ? 'no unison' : `unison ${score.toFixed(2)}`),
  motionOf: (length: number) => `Motion trace of ${wholeMoment(length)}`,
  closeCompare: 'Back to one clip',
  nothingToCompare: 'No other squad has a film of this station.',

  doneTitle: 'Nothing waits for your eye',
  done: (clips: number) =>
    `${clips === 1 ? 'The one clip that counts is' : `All ${clips} clips that count are`} inked. Press any place on the class card to look at a clip again.`,
  doneFlags: (flags: number) =>
    `${count(flags, 'flag')} still ${flags === 1 ? 'waits' : 'wait'} to be settled.`,
  toScores: 'Go to Scores',
  toFlags: 'Settle the flags',
  emptyTitle: 'No clips yet',
  empty: 'Clips come here when a squad’s folder has been brought in. One key will mark a clean one.',
  toBringIn: 'Go to Bring in',
  loadingTitle: 'Reading the clips',
  loading: 'The first ones appear here as soon as their dates are read.',
} as const;
