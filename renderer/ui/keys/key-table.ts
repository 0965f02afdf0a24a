/** Where a key works: everywhere, or on one screen. */
export type KeyPlace =
  | 'everywhere'
  | 'bring-in'
  | 'line-up'
  | 'review'
  | 'scores'
  | 'hand-in'
  | 'plan'
  | 'class-clock';

interface KeyEntry {
  readonly place: KeyPlace;
  /** As {@link readCombo} gives it: `ctrl+shift+z`, `f`, `?`, `ArrowUp`. */
  readonly combo: string;
}

/** Every key of the window with its first binding; the list of keys, the caps and `useKeys` all read this one table. */
export const KEY_TABLE = {
  keys: { place: 'everywhere', combo: '?' },
  'next-flag': { place: 'everywhere', combo: 'f' },
  undo: { place: 'everywhere', combo: 'ctrl+z' },
  redo: { place: 'everywhere', combo: 'ctrl+shift+z' },
  plan: { place: 'everywhere', combo: 'ctrl+1' },
  'bring-in': { place: 'everywhere', combo: 'ctrl+2' },
  'line-up': { place: 'everywhere', combo: 'ctrl+3' },
  review: { place: 'everywhere', combo: 'ctrl+4' },
  scores: { place: 'everywhere', combo: 'ctrl+5' },
  'hand-in': { place: 'everywhere', combo: 'ctrl+6' },
  'open-lesson': { place: 'everywhere', combo: 'ctrl+o' },
  'back-out': { place: 'everywhere', combo: 'Escape' },
  'station-up': { place: 'plan', combo: 'alt+ArrowUp' },
  'station-down': { place: 'plan', combo: 'alt+ArrowDown' },
  'add-folders': { place: 'bring-in', combo: 'o' },
  'ticket-up': { place: 'line-up', combo: 'ArrowUp' },
  'ticket-down': { place: 'line-up', combo: 'ArrowDown' },
  'ticket-left': { place: 'line-up', combo: 'ArrowLeft' },
  'ticket-right': { place: 'line-up', combo: 'ArrowRight' },
  'choose-station': { place: 'line-up', combo: 's' },
  'tablet-clock': { place: 'line-up', combo: 't' },
  'move-clip': { place: 'line-up', combo: 'm' },
  'keep-flag': { place: 'line-up', combo: 'k' },
  'clear-flag': { place: 'line-up', combo: 'c' },
  'zoom-in': { place: 'line-up', combo: '+' },
  'zoom-out': { place: 'line-up', combo: '-' },
  'by-place': { place: 'line-up', combo: 'p' },
  confirm: { place: 'review', combo: 'Enter' },
  'yes-to-rest': { place: 'review', combo: 'y' },
  'no-to-rest': { place: 'review', combo: 'x' },
  back: { place: 'review', combo: 'Backspace' },
  play: { place: 'review', combo: ' ' },
  'rep-up': { place: 'review', combo: 'ArrowUp' },
  'rep-down': { place: 'review', combo: 'ArrowDown' },
  'frame-back': { place: 'review', combo: 'ArrowLeft' },
  'frame-on': { place: 'review', combo: 'ArrowRight' },
  'loop-rep': { place: 'review', combo: 'l' },
  slower: { place: 'review', combo: '[' },
  faster: { place: 'review', combo: ']' },
  note: { place: 'review', combo: 'n' },
  'lane-more': { place: 'review', combo: '+' },
  'lane-less': { place: 'review', combo: '-' },
  compare: { place: 'review', combo: 'c' },
  'hide-names': { place: 'review', combo: 'h' },
  'criterion-1': { place: 'review', combo: '1' },
  'criterion-2': { place: 'review', combo: '2' },
  'criterion-3': { place: 'review', combo: '3' },
  'criterion-4': { place: 'review', combo: '4' },
  'criterion-5': { place: 'review', combo: '5' },
  'criterion-6': { place: 'review', combo: '6' },
  'criterion-7': { place: 'review', combo: '7' },
  'criterion-8': { place: 'review', combo: '8' },
  'criterion-9': { place: 'review', combo: '9' },
  'open-squad': { place: 'scores', combo: 'ArrowRight' },
  'close-squad': { place: 'scores', combo: 'ArrowLeft' },
  adjust: { place: 'scores', combo: 'e' },
  why: { place: 'scores', combo: 'w' },
  write: { place: 'hand-in', combo: 'Enter' },
  'clock-start': { place: 'class-clock', combo: 's' },
  'clock-earlier': { place: 'class-clock', combo: '-' },
  'clock-later': { place: 'class-clock', combo: '+' },
  'clock-sound': { place: 'class-clock', combo: 'm' },
  'clock-whole': { place: 'class-clock', combo: 'w' },
} as const satisfies Readonly<Record<string, KeyEntry>>;

/** A thing that a key does. */
export type KeyId = keyof typeof KEY_TABLE;

/** Every key in the order of the list. */
export const KEY_IDS = Object.keys(KEY_TABLE) as readonly KeyId[];

/** A key press as text: modifiers in one order, then the key; letters small. Command counts as Control. */
export function readCombo(event: {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}): string {
  const isLetter = /^\p{L}$/u.test(event.key);
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  // Shift is part of the sign itself for `?` and `+`, and says something only beside letters and named keys.
  const shift = event.shiftKey && (isLetter || event.key.length > 1);
  return [
    ...(event.ctrlKey || event.metaKey ? ['ctrl'] : []),
    ...(event.altKey ? ['alt'] : []),
    ...(shift ? ['shift'] : []),
    key,
  ].join('+');
}

/** A single sign without Control or Alt: what must be off in text fields and can be switched off (WCAG 2.2, 2.1.4). */
export function isSingleSign(combo: string): boolean {
  return combo.length === 1 && combo !== ' ';
}

/** The binding in force: the teacher's own, else the first one. */
export function getCombo(id: KeyId, remapped: Readonly<Partial<Record<string, string>>>): string {
  return remapped[id] ?? KEY_TABLE[id].combo;
}

/** The key that has a combination already where `id` works, so that it cannot have it too; null: it is free. */
export function findClash(
  id: KeyId,
  combo: string,
  remapped: Readonly<Partial<Record<string, string>>>,
): KeyId | null {
  const { place } = KEY_TABLE[id];
  const meets = (other: KeyPlace) => place === 'everywhere' || other === 'everywhere' || other === place;
  const clash = KEY_IDS.find(
    (other) => other !== id && meets(KEY_TABLE[other].place) && getCombo(other, remapped) === combo,
  );
  return clash ?? null;
}
