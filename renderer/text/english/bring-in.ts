import { count, list, size, span } from './amounts.ts';
import { nameClock } from './clock.ts';

/** A signed clock correction: `+4 s`, `−37 min`. */
export function signedSpan(seconds: number): string {
  if (Math.abs(seconds) < 0.05) return '0 s';
  return `${seconds > 0 ? '+' : '−'}${span(seconds)}`;
}

/** What the teacher reads at Bring in. */
export const BRING_IN = {
  emptySentence: 'Clips stay where they are until you say so. Nothing is ever changed on a tablet.',
  sentence: (folders: number, clips: number, own: number) =>
    `${count(folders, 'folder')}, ${count(clips, 'clip')}. ${own} ${own === 1 ? 'belongs' : 'belong'} to this period.`,
  stoppedSentence: 'Copying has stopped.',
  add: 'Add folders…',
  inPlace: 'Read in place…',
  readAgain: 'Read again',
  limits: 'Limits of the period…',
  dropLabel: 'Drop folders here',
  dropHead: 'Drop the squads’ folders here',
  dropText:
    'One folder for each squad, one folder of folders, or a whole tablet. Squads are told apart by the folder’s name, or you choose.',
  dropNow: 'Let go to bring these in',
  choose: 'Choose folders…',
  progress: 'Progress',
  stampsRead: (done: number, total: number) => `${done} of ${total} dates read`,
  cardsRead: (done: number, total: number) => `${done} of ${total} clips searched for cards`,
  cardsNext: (stamps: number) => `${count(stamps, 'date')} read. Now the cards`,
  looking: 'Looking into the folder',
  sending: (done: string, total: string) => `${done} of ${total} received and checked`,
  copying: (done: string, total: string) => `${done} of ${total} copied and checked`,
  stop: 'Stop',
  trays: 'Trays by squad',
  trayName: (squad: string, filled: number, slots: number) =>
    `${squad}, ${filled} of ${slots} slots have a clip`,
  filled: (filled: number, slots: number) => `${filled} of ${slots}`,
  moreThan: (clips: number, slots: number) => ({ clips: String(clips), slots: `(${count(slots, 'slot')})` }),
  noClips: 'no clips yet',
  dropHere: 'drop its folder here',
  readingStamps: 'reading',
  missing: (missing: number) => `${missing} missing`,
  clock: nameClock,
  clockByTeacher: (seconds: number) => `${nameClock(seconds)}, by you`,
  clockNotFilmed: (seconds: number) => `clock not filmed, ±${span(seconds)}`,
  size,
  slipClip: (slot: number, station: string, isGuess: boolean) =>
    `slot ${slot + 1}, station ${station}${isGuess ? ', pencilled by the machine' : ''}`,
  slipReading: (slot: number | null) => (slot === null ? 'a clip, being read' : `slot ${slot + 1}, reading`),
  slipGap: (slot: number) => `slot ${slot + 1}, no clip`,
  slipExtra: 'one clip more than the route has slots',
  noTime: 'no time',
  toPlace: (amount: number) => `${amount} to place`,
  nothingToPlace: 'Nothing waits',
  nothingToPlaceText: 'Every clip has its squad. The next step is Line up.',
  next: 'next',
  toLineUp: 'To Line up',
  waitingTray: 'What waits',
  nobodys: 'Whose is it?',
  nobodysText: (path: string) => `${path} lies in no squad’s folder.`,
  still: (name: string) => `Still of ${name}`,
  whose: (squad: string) => `It is ${squad}’s`,
  leaveOut: 'Leave it out',
  takeIn: 'Take it in',
  staysWith: (squad: string) => `${squad}’s after all`,
  placeIsRight: 'Its place is right',
  shiftBy: (seconds: number) => `Use ${signedSpan(seconds)}`,
  leaveInDoubt: 'Leave in doubt',
  setClock: 'Set its clock…',
  chooseSlot: 'Choose its slot…',
  asideHead: 'Set aside, not thrown away.',
  look: 'Look',
  hide: 'Hide',
  noticesHead: 'Noticed.',
  notices: (amount: number) =>
    `${count(amount, 'thing')} that ${amount === 1 ? 'asks' : 'ask'} nothing of you.`,
  consentHead: 'Before you go on.',
  consent: (names: readonly string[]) =>
    `${list(names)} ${names.length === 1 ? 'is' : 'are'} not to be shown in stills. Your school’s policy on pupil video goes first.`,
  stopped: 'Copying stopped',
  goOn: 'Go on copying',
  readInPlace: 'Go on, reading in place',
  another: 'Choose another folder…',
  putAway: 'Put away',
  done: (copied: number, there: number) =>
    `${count(copied, 'clip')} copied and checked${there > 0 ? `, ${there} were here already` : ''}.`,
  notAllCame: 'Not everything came in',
  nothingCame: 'Nothing came in',
  leftMore: (more: number) => `${count(more, 'more file')} likewise.`,
  nobodyLeft:
    'Name its folder by the squad’s name, pinnie colour or tablet and bring it in again; or read the folder in place and say whose each clip is. On the tablet nothing was changed.',
  noClipsThere: 'There are no clips in this folder.',
  noClipsThereTodo: 'Look whether the tablet keeps them in another one, such as DCIM.',
  inPlaceInstead: 'Read it in place instead',
  place: 'Read clips where they lie',
  ofSquad: (squad: string) => `${squad}’s tablet`,
} as const;
