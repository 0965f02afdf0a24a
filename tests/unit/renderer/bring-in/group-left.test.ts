import { expect, test } from 'vitest';
import { groupLeft } from '../../../../renderer/features/bring-in/group-left.ts';
import type { Problem } from '../../../../src-core/contract/problem.ts';

const nobodys = (path: string): Problem => ({ code: 'clip-of-nobody', path, reason: 'no-squad-named' });

test('what was left is told by kind, a few by name', () => {
  const problems: Problem[] = [
    nobodys('a.mov'),
    { code: 'link-not-followed', path: 'l.mov' },
    nobodys('b.mov'),
    nobodys('c.mov'),
    nobodys('d.mov'),
  ];
  expect(groupLeft(problems).map(({ shown, more }) => [shown.length, shown[0]?.code, more])).toEqual([
    [2, 'clip-of-nobody', 2],
    [1, 'link-not-followed', 0],
  ]);
});

test('files that are no clips are not worth a word', () => {
  expect(groupLeft([{ code: 'file-not-a-clip', path: 'Thumbs.db' }])).toEqual([]);
});
