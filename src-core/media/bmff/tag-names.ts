import { parseDateText } from '../date-text.ts';
import type { DateField } from '../media-facts.ts';
import { noteRecorder } from '../recorder.ts';
import { MOST_DATES, type MovieDraft } from './movie-draft.ts';

/** What a named value says: a date of some kind, or a name of the recorder. */
type Saying = Extract<DateField, 'recording-key' | 'day-tag'> | 'make' | 'model' | 'software';

/**
 * Names under which movies keep what is read here: Apple's "QuickTime metadata keys", the keys that Android's
 * MPEG4Writer writes, and the four letters of Apple's "User data atoms".
 */
const SAYINGS: ReadonlyMap<string, Saying> = new Map([
  // "The date the movie file content was created."
  ['com.apple.quicktime.creationdate', 'recording-key'],
  ['com.apple.quicktime.make', 'make'],
  ['com.apple.quicktime.model', 'model'],
  ['com.apple.quicktime.software', 'software'],
  ['com.android.manufacturer', 'make'],
  ['com.android.model', 'model'],
  ['©day', 'day-tag'],
  ['©mak', 'make'],
  ['©mod', 'model'],
  ['©swr', 'software'],
  ['©too', 'software'],
]);

/** The key whose presence alone says that stock Android recorded the file; its value is the version. */
export const ANDROID_KEY = 'com.android.version';

/** True for names that say something here, so that values of others need not be read. */
export function isKnownTagName(name: string): boolean {
  return SAYINGS.has(name);
}

/** Adds what a named value says to the draft; unknown names and empty values say nothing. */
export function noteTag(draft: MovieDraft, name: string, text: string): void {
  const saying = SAYINGS.get(name);
  if (!saying || text === '') return;
  if (saying === 'recording-key' || saying === 'day-tag') noteDateTag(draft, saying, text);
  else noteRecorder(draft.recorder, saying, text);
}

/** Adds a date that is written as text. */
export function noteDateTag(draft: MovieDraft, field: DateField, text: string): void {
  if (text === '' || draft.dates.length >= MOST_DATES) return;
  draft.dates.push({ field, raw: text.slice(0, 64), ...parseDateText(text) });
}
