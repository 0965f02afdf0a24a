/** What each key does, for the list of keys; named as `ui/keys/key-table.ts` names them. */
export const KEY_WORDS: Readonly<Record<string, string>> = {
  keys: 'this list',
  'next-flag': 'next flag or problem',
  undo: 'undo',
  redo: 'redo',
  plan: 'Plan',
  'bring-in': 'Bring in',
  'line-up': 'Line up',
  review: 'Review',
  scores: 'Scores',
  'hand-in': 'Hand in',
  'open-lesson': 'another lesson',
  'back-out': 'back out',
  'station-up': 'station one row up',
  'station-down': 'station one row down',
  'add-folders': 'add folders',
  'ticket-up': 'clip before',
  'ticket-down': 'clip after',
  'ticket-left': 'squad to the left',
  'ticket-right': 'squad to the right',
  'choose-station': 'choose its station',
  'tablet-clock': 'set the tablet’s clock',
  'move-clip': 'move it, then a slot’s number',
  'keep-flag': 'keep the flag',
  'clear-flag': 'clear the flag',
  'zoom-in': 'zoom in',
  'zoom-out': 'zoom out',
  'by-place': 'by squad or by place',
  confirm: 'confirm and go on',
  'yes-to-rest': 'yes to what has no answer, confirm and go on',
  'no-to-rest': 'no to what has no answer, confirm and go on',
  back: 'clip before',
  play: 'play or pause',
  'rep-up': 'rep before',
  'rep-down': 'rep after',
  'frame-back': 'frame before',
  'frame-on': 'frame after',
  'loop-rep': 'loop the rep',
  slower: 'slower',
  faster: 'faster',
  note: 'write a note',
  'lane-more': 'one performer more',
  'lane-less': 'one performer fewer',
  compare: 'compare squads',
  'hide-names': 'hide names',
  'criterion-1': 'flip criterion 1',
  'criterion-2': 'flip criterion 2',
  'criterion-3': 'flip criterion 3',
  'criterion-4': 'flip criterion 4',
  'criterion-5': 'flip criterion 5',
  'criterion-6': 'flip criterion 6',
  'criterion-7': 'flip criterion 7',
  'criterion-8': 'flip criterion 8',
  'criterion-9': 'flip criterion 9',
  'open-squad': 'open the squad',
  'close-squad': 'close the squad',
  adjust: 'adjust, with a reason',
  why: 'why this sum',
  write: 'write the sheet',
  'clock-start': 'start the class now',
  'clock-earlier': 'one minute earlier',
  'clock-later': 'one minute later',
  'clock-sound': 'sound on or off',
  'clock-whole': 'whole screen or not',
};

/** Words of the list of keys. */
export const KEY_LIST = {
  title: 'Keys',
  everywhere: 'Everywhere',
  sentence: 'Select a key below to change it. Single letters rest while you write in a field.',
  singleKeys: 'Single-letter keys work',
  change: (does: string, key: string) => `${does}: ${key}. Press to bind another key`,
  press: 'Press a key…',
  reset: 'Reset all keys',
  taken: (key: string, does: string) => `${key} is taken: ${does}. Nothing was changed; press another key.`,
} as const;

const SIGNS: Readonly<Record<string, string>> = {
  ' ': 'Space',
  Escape: 'Esc',
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Backspace: '⌫',
  '-': '−',
};

const MODIFIERS: Readonly<Record<string, string>> = { ctrl: 'Ctrl', alt: 'Alt', shift: 'Shift' };

/** A binding as it stands on a key cap: `Ctrl+Shift+Z`, `↑`, `F`. */
export function nameCombo(combo: string): string {
  const parts = combo === '+' ? ['+'] : combo.split('+');
  return parts
    .map((part) => MODIFIERS[part] ?? SIGNS[part] ?? (part.length === 1 ? part.toUpperCase() : part))
    .join('+');
}
