// Engines word and place JSON errors differently, and some give no place at all. This scanner of the grammar of
// RFC 8259 is asked only after JSON.parse has refused a text.

const SPACE = /[ \t\n\r]*/y;
// Control characters may not stand in a string unescaped.
// biome-ignore lint/suspicious/noControlCharactersInRegex: the grammar names them
const STRING_BODY = /(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4}))*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;

/** The beginning of a word, the middle of a number or of an escape, at the end of a text. */
const CUT_TOKEN =
  /(?:(?:t|tr|tru|f|fa|fal|fals|n|nu|nul|-|(?<=\d)\.|(?<=\d)[eE][+-]?)|\\(?:u[0-9A-Fa-f]{0,3})?)$/;

type Expectation = 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'comma-or-end';

/** Where reading stands: the next character, the brackets that are open, and what may come. */
interface Cursor {
  at: number;
  readonly open: ('[' | '{')[];
  expects: Expectation | 'nothing';
}

/** A place in a text as an editor shows it: line and column from 1, and the offset in UTF-16 units from 0. */
export interface TextPlace {
  readonly offset: number;
  readonly line: number;
  readonly column: number;
}

/** The first place at which a text stops being JSON (RFC 8259); its end where it is cut short; null where it is JSON. */
export function findJsonError(text: string): TextPlace | null {
  const cursor: Cursor = { at: 0, open: [], expects: 'value' };
  while (true) {
    skip(text, cursor, SPACE);
    if (cursor.expects === 'nothing') return cursor.at === text.length ? null : getPlace(text, cursor.at);
    if (!step(text, cursor)) return getPlace(text, isCut(text, cursor.at) ? text.length : cursor.at);
  }
}

/** The place of an offset in a text; a line ends with LF. */
function getPlace(text: string, offset: number): TextPlace {
  const before = text.slice(0, offset);
  return { offset, line: before.split('\n').length, column: offset - before.lastIndexOf('\n') };
}

/** Whether the token that begins here, or a part of it, only lacks its rest. */
function isCut(text: string, at: number): boolean {
  return CUT_TOKEN.exec(text)?.index === at;
}

/** Reads one token; false, with the cursor on the culprit, where none fits. */
function step(text: string, cursor: Cursor): boolean {
  const next = text[cursor.at] ?? '';
  switch (cursor.expects) {
    case 'comma-or-end':
      return next === ',' ? readComma(cursor) : close(next, cursor);
    case 'key-or-end':
      return next === '}' ? close(next, cursor) : readKey(text, cursor);
    case 'key':
      return readKey(text, cursor);
    case 'value-or-end':
      return next === ']' ? close(next, cursor) : readValue(text, cursor);
    default:
      return readValue(text, cursor);
  }
}

function readComma(cursor: Cursor): boolean {
  cursor.at += 1;
  cursor.expects = cursor.open.at(-1) === '{' ? 'key' : 'value';
  return true;
}

function readValue(text: string, cursor: Cursor): boolean {
  const next = text[cursor.at];
  if (next === '{' || next === '[') {
    cursor.open.push(next);
    cursor.at += 1;
    cursor.expects = next === '{' ? 'key-or-end' : 'value-or-end';
    return true;
  }
  const isRead =
    next === '"' ? readString(text, cursor) : skip(text, cursor, WORD) || skip(text, cursor, NUMBER);
  if (isRead) cursor.expects = cursor.open.length > 0 ? 'comma-or-end' : 'nothing';
  return isRead;
}

function readString(text: string, cursor: Cursor): boolean {
  if (text[cursor.at] !== '"') return false;
  cursor.at += 1;
  skip(text, cursor, STRING_BODY);
  if (text[cursor.at] !== '"') return false;
  cursor.at += 1;
  return true;
}

function readKey(text: string, cursor: Cursor): boolean {
  if (!readString(text, cursor)) return false;
  skip(text, cursor, SPACE);
  if (text[cursor.at] !== ':') return false;
  cursor.at += 1;
  cursor.expects = 'value';
  return true;
}

function close(next: string, cursor: Cursor): boolean {
  const fits = cursor.open.at(-1) === '[' ? next === ']' : next === '}';
  if (!fits) return false;
  cursor.open.pop();
  cursor.at += 1;
  cursor.expects = cursor.open.length > 0 ? 'comma-or-end' : 'nothing';
  return true;
}

function skip(text: string, cursor: Cursor, pattern: RegExp): boolean {
  pattern.lastIndex = cursor.at;
  const match = pattern.exec(text);
  if (!match) return false;
  cursor.at = pattern.lastIndex;
  return match[0] !== '';
}
