import { describe, expect, test } from 'vitest';
import { findLooseWords } from './check-words.ts';
import { readTree } from './source-tree.ts';

const check = (text: string) => findLooseWords(new Map([['a.tsx', `const a = (${text});`]]));

describe('words for the teacher', () => {
  test('stand in the catalogue, none in a component', () => {
    expect(
      findLooseWords(
        readTree('renderer/features', 'renderer/shell', 'renderer/ui', 'renderer/client', 'renderer/storage'),
      ),
    ).toEqual([]);
  });

  test.each([
    ['text between tags', '<p>Nothing waits</p>'],
    ['text in braces', "<p>{'Nothing waits'}</p>"],
    ['a template', '<p>{`$' + '{a} clips`}</p>'],
    ['one side of a choice', "<p>{a ? 'yes' : WORDS.no}</p>"],
    ['what follows a condition', "<p>{a && 'open'}</p>"],
    ['a name for screen readers', '<p aria-label="Trays" />'],
    ['a title in braces', "<p title={a ? 'Play' : undefined} />"],
    ['a placeholder', '<input placeholder="such as 10:55" />'],
  ])('%s is found', (_, text) => {
    expect(check(text)).toHaveLength(1);
  });

  test.each([
    ['signs and figures', '<p>· 10:46, {WORDS.a} ✓ A</p>'],
    ['a class', "<p className={a ? 'open' : 'shut'} />"],
    ['a key of the table', '<KeyCap id="next-flag" />'],
    ['the catalogue’s own words', '<p title={WORDS.title}>{WORDS.text(3)}</p>'],
  ])('%s will do', (_, text) => {
    expect(check(text)).toEqual([]);
  });
});
