import { useSyncExternalStore } from 'react';
import { keepRecord, readRecord } from './kept-record.ts';

/** How marks leave the desk: as a file for a gradebook, or on paper. */
export type HandInKind = 'csv' | 'xlsx' | 'oneroster' | PaperKind;

/** The kinds that are printed; `SheetKind` of the core. */
export type PaperKind = 'grade-sheet' | 'squad-slips' | 'pupil-slips';

/** What the teacher likes on this machine; nothing of any lesson. */
export interface Preferences {
  /** `auto`: as the system has it. */
  readonly theme: 'auto' | 'light' | 'dark';
  /** Size of text in per cent, 100 to 200. */
  readonly textPercent: number;
  readonly areSingleKeysOn: boolean;
  /** Keys bound otherwise than at first, by key id. */
  readonly keys: Readonly<Partial<Record<string, string>>>;
  /** Clips are watched whole as soon as they are read, without being asked to; off for a slow or an unplugged machine. */
  readonly isWatchingByItself: boolean;
  /** Squads' names are hidden while marking. */
  readonly areNamesHidden: boolean;
  /** The short tour was read or put away. */
  readonly isTourDone: boolean;
  /** School and period of the lesson that was made last, to begin the next one with. */
  readonly lastSchool: { readonly school: string; readonly start: string; readonly end: string };
  /** What was handed in last, and by which version of OneRoster. */
  readonly handIn: { readonly kind: HandInKind; readonly version: '1.1' | '1.2' };
  /** How sheets were printed last. */
  readonly paper: {
    readonly paper: 'a4' | 'letter';
    readonly isGrey: boolean;
    readonly stills: 'shown' | 'blurred' | 'left-out';
  };
}

const PLACE = 'routemark.preferences';

const USUAL: Preferences = {
  theme: 'auto',
  textPercent: 100,
  areSingleKeysOn: true,
  keys: {},
  isWatchingByItself: true,
  areNamesHidden: false,
  isTourDone: false,
  lastSchool: { school: '', start: '09:00', end: '09:45' },
  handIn: { kind: 'csv', version: '1.2' },
  paper: { paper: 'a4', isGrey: false, stills: 'blurred' },
};

const listeners = new Set<() => void>();
let current: Preferences | null = null;

/** The preferences in force; the same object until one changes. */
export function readPreferences(): Preferences {
  current ??= { ...USUAL, ...readRecord(PLACE) };
  return current;
}

/** Changes some preferences, shows them at once and keeps them for the next start. */
export function changePreferences(change: Partial<Preferences>): void {
  current = { ...readPreferences(), ...change };
  showPreferences();
  keepRecord(PLACE, current);
  for (const listener of listeners) listener();
}

/** Puts theme and size of text on the page. */
export function showPreferences(): void {
  const { theme, textPercent } = readPreferences();
  const root = document.documentElement;
  if (theme === 'auto') delete root.dataset.theme;
  else root.dataset.theme = theme;
  root.style.setProperty('--scale', String(textPercent / 100));
  // Chromium goes on measuring container queries by the size of text that the root had when the container came to be,
  // as long as nothing in it asks: a new container knows the new size.
  const { body } = document;
  body.style.containerType = 'normal';
  body.getBoundingClientRect();
  body.style.containerType = '';
}

/** The preferences in force, followed: shown anew when one changes. */
export function usePreferences(): Preferences {
  return useSyncExternalStore(follow, readPreferences);
}

function follow(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
