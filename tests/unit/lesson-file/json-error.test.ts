import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findJsonError } from '../../../src-core/lesson-file/json-error.ts';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const json = fc.json({ maxDepth: 4 });

/** JSON with a piece cut out, put in or doubled. */
const damaged = fc
  .tuple(
    json,
    fc.nat(),
    fc.nat(4),
    fc.constantFrom('', ',', '"', '}', ']', '{', ':', '0', 'x', '\n', '\\', '\u0000'),
  )
  .map(([text, at, length, piece]) => {
    const from = at % (text.length + 1);
    return text.slice(0, from) + piece + text.slice(from + length);
  });

describe('the place where a text stops being JSON', () => {
  test('is none exactly where the engine’s own parser takes the text', () => {
    fc.assert(
      fc.property(fc.oneof(json, damaged, fc.string()), (text) => {
        expect(findJsonError(text) === null).toBe(isJson(text));
      }),
      { numRuns: 3000 },
    );
  });

  test('is where the text can be cut and still be the beginning of JSON, and no later', () => {
    fc.assert(
      fc.property(damaged, (text) => {
        const place = findJsonError(text);
        fc.pre(place !== null && place.offset < text.length);
        // The part before it alone is not wrong anywhere: it only ends too early, or is JSON already.
        const before = text.slice(0, place?.offset);
        const again = findJsonError(before);
        expect(again === null || again.offset === before.length).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  test('is the end of a text that was cut short, wherever that was', () => {
    fc.assert(
      fc.property(json, fc.nat(), (inner, at) => {
        const text = `{"a":[${inner}]}`;
        const length = 1 + (at % (text.length - 1));
        expect(findJsonError(text.slice(0, length))?.offset).toBe(length);
      }),
      { numRuns: 2000 },
    );
  });

  test.each(['[tru', '[-', '[1.', '[1e', '[1e+', '["\\', '["\\u12', '["a'])('of %s is its end', (text) => {
    expect(findJsonError(text)?.offset).toBe(text.length);
  });

  test.each([
    ['{"a": 1,}', 1, 9],
    ['{"a" 1}', 1, 6],
    ['[1 2]', 1, 4],
    ['{\n  "a": tru\n}', 2, 8],
    ['{}}', 1, 3],
    ['[1}', 1, 3],
    ["{'a':1}", 1, 2],
  ])('in %j it is line %d, column %d', (text, line, column) => {
    expect(findJsonError(text)).toMatchObject({ line, column });
  });
});
