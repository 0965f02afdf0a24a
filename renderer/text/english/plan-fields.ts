const EXPECTED: Readonly<Record<string, string>> = {
  'local-time': 'a local time such as 10:40',
  'short-code': 'small letters, digits and hyphens, 32 at most',
  'some-words': 'some words',
  'at-most-200-characters': 'at most 200 characters',
  'at-most-500-characters': 'at most 500 characters',
  ulid: 'an event’s id',
  'utc-instant': 'an instant in UTC',
  'other-text': 'a text of another form',
  'station-code': 'one to three capital letters or digits',
  'web-address': 'a web address that begins with https://',
  'no-fragment': 'a web address without #',
  'photo-path': 'a picture in the folder photos, such as photos/a.jpg',
  colour: 'a colour such as #1F8A86',
  'lesson-code': 'up to 12 capitals, digits or hyphens',
  version: 'version',
  missing: 'a value, and there is none',
  'unknown-key': 'nothing: this name means nothing here',
  'one-of': 'one of',
  'at-least': 'at least',
  'at-most': 'at most',
  'at-least-items': 'a list with at least this many entries:',
  'at-most-items': 'a list with at most this many entries:',
  'at-least-characters': 'a text with at least this many characters:',
  'at-most-characters': 'a text with at most this many characters:',
  date: 'a date such as 2025-05-15',
  number: 'a number',
  integer: 'a whole number',
  text: 'a text in quotes',
  list: 'a list in [ ]',
  group: 'a group in { }',
  'yes-or-no': 'true or false',
};

/** What a field should hold, as the end of "expected …". */
export function describeExpected(expected: string, detail: string | null): string {
  const words = EXPECTED[expected] ?? 'another value';
  return detail === null || expected === 'unknown-key' ? words : `${words} ${detail}`;
}
