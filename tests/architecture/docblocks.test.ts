import { describe, expect, test } from 'vitest';
import { findUndocumented } from './check-docblocks.ts';
import { DOCUMENTED_FOLDERS } from './rules.ts';
import { readTree } from './source-tree.ts';

function check(text: string): string[] {
  return findUndocumented(new Map([['a.ts', text]]));
}

describe('docblocks', () => {
  test('every export says what its name does not', () => {
    expect(findUndocumented(readTree(...DOCUMENTED_FOLDERS))).toEqual([]);
  });

  test.each([
    ['an export without one', 'export const a = 1;'],
    ['one of too few words', '/** The reading. */\nexport const a = 1;'],
    ['a plain comment', '// The reading in seconds, never negative.\nexport const a = 1;'],
    [
      'one that belongs to something else',
      '/** The reading in seconds, never negative. */\nconst b = 2;\nexport const a = b;',
    ],
    ['a type without one', 'export interface A { b: 1 }'],
    ['a name exported later', 'const a = 1;\nexport { a };'],
    ['a default export', 'export default 1;'],
  ])('%s is refused', (_, text) => {
    expect(check(text)).toHaveLength(1);
  });

  test.each([
    ['five words', '/** The reading in seconds, signed. */\nexport const a = 1;'],
    ['several lines', '/**\n * The reading in seconds,\n * never negative.\n */\nexport function a() {}'],
    [
      'a docblock where the name is declared',
      '/** The reading in seconds, signed. */\nconst a = 1;\nexport { a };',
    ],
    ['a re-export, documented at its source', "export { a } from './b.ts';"],
    ['what is not exported', 'const a = 1;'],
  ])('%s will do', (_, text) => {
    expect(check(text)).toEqual([]);
  });
});
