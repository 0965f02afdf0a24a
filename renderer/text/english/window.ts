import type { WayCount } from '../way-count.ts';
import { count } from './amounts.ts';
import { namePeriod } from './period.ts';

/** A squad whose name is hidden: by its place in the plan, so that two in one sentence are told apart; -1: in none. */
export function nameHiddenSquad(at: number): string {
  return at < 0 ? 'one squad' : `squad ${at + 1}`;
}

/** A clip whose file's name is hidden, for it may say whose it is. */
export const ONE_CLIP = 'one clip';

/** A file or folder whose name is hidden. */
export const ONE_FILE = 'one file';

/** Closes a slip or sheet that lies open. */
export const CLOSE = 'Close';

/** The six steps of the way. */
export const STEP_NAMES = {
  plan: 'Plan',
  'bring-in': 'Bring in',
  'line-up': 'Line up',
  review: 'Review',
  scores: 'Scores',
  'hand-in': 'Hand in',
} as const;

/** What is left at a step, in two words or three. */
export function describeCount(left: WayCount): string {
  switch (left.kind) {
    case 'ready':
      return 'ready';
    case 'problems':
      return count(left.amount, 'problem');
    case 'no-clips':
      return 'no clips yet';
    case 'reading':
      return `reading ${left.done} of ${left.total}`;
    case 'to-place':
      return `${left.amount} to place`;
    case 'all-placed':
      return 'all placed';
    case 'flags':
      return count(left.amount, 'flag');
    case 'in-order':
      return 'in order';
    case 'left':
      return `${left.amount} left`;
    case 'all-inked':
      return 'all inked';
    case 'to-settle':
      return `${left.amount} to settle`;
    case 'settled':
      return 'settled';
    case 'not-yet':
      return 'not yet';
    case 'handed-in':
      return 'handed in';
  }
}

/** Words of the frame around every screen. */
export const FRAME = {
  way: 'The lesson, from plan to hand in',
  undo: 'Undo',
  redo: 'Redo',
  nothingToUndo: 'Undo: nothing to take back',
  nothingToRedo: 'Redo: nothing to bring back',
  textSign: 'Aa',
  textSize: (percent: number) => `Text size, now ${percent} per cent`,
  theme: { auto: 'Light or dark: as the system', light: 'Light or dark: light', dark: 'Light or dark: dark' },
  keys: 'Keys',
  allKeys: 'All keys',
  lessons: 'Other lessons',
  period: namePeriod,
  folder: 'Lesson folder',
  saved: (time: string) => `Saved ${time}`,
  unsaved: (amount: number) => `${count(amount, 'decision')} waiting to be saved`,
  nothingYet: 'Nothing decided yet',
  local: 'nothing leaves this machine',
  skip: 'Skip to the page',
  faultTitle: 'This page failed',
  fault: {
    what: 'Something in this window went wrong, not in your lesson.',
    todo: 'Every decision that was saved is safe. Show the page again, or go to another step.',
  },
  again: 'Show it again',
  trouble: 'That did not work',
  putAway: 'Put away',
  unreachable: 'Waiting for the program behind this window',
} as const;

/** The first screen: which lesson, and the demo one press away. */
export const START = {
  title: 'Which lesson?',
  firstTitle: 'Routemark',
  sentence: 'A lesson is a folder: its plan, its class and its clips.',
  demoHead: 'Look around in the demo lesson',
  demoText: 'Four squads, a harbour, 28 clips with the usual mistakes. Nothing in it can be broken.',
  openDemo: 'Open the demo lesson',
  demoFilming: (done: number, total: number) => `Filming the demo, ${done} of ${total} clips`,
  demoWait: 'The demo is filmed here once; then it opens at once.',
  stop: 'Stop',
  recent: 'Opened before',
  own: 'Your own lesson',
  ownText: 'Open its folder: the one that holds plan.json, roster.csv and the clips.',
  gone: 'not there now',
  forget: (title: string) => `${title}; its folder stays`,
  due: (day: string) => `Kept until ${day}, which is over: look after it`,
  forgetShort: 'Off the list',
  open: 'Open a lesson folder…',
  opening: 'Opening…',
  demoMark: 'demo',
  noFfmpeg: 'No ffmpeg was found on this machine: films play, but cards and stills are missing.',
  folders: 'Choose a folder',
  places: 'Places',
  up: 'Up',
  openThis: 'Open this lesson',
  chooseThis: 'Choose this folder',
  noFolders: 'No folders in here.',
  lesson: 'lesson',
  tourTitle: 'How it goes',
  tour: [
    'Bring in the tablets’ folders; clips find their squad and place by themselves.',
    'Dashed and in italics is what the machine suggests; solid ink is what you confirmed: inked and confirmed are one.',
    'Only what needs you is red.',
    'Enter confirms a clip and shows the next; ? lists every key.',
    'No step locks another, and nothing leaves this machine.',
  ],
  tourDone: 'Got it',
} as const;
