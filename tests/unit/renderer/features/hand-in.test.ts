import { describe, expect, test } from 'vitest';
import { getFullName, suggestName } from '../../../../renderer/features/hand-in/file-names.ts';
import { groupByPart } from '../../../../renderer/features/hand-in/look-after/held-parts.ts';
import { findUsualDay } from '../../../../renderer/features/hand-in/look-after/use-keeping.ts';
import { listUnshown } from '../../../../renderer/features/hand-in/unshown.ts';
import { BUNDLE_RULE_WORDS } from '../../../../renderer/text/english/bundle-rules.ts';
import type { KeepingView, KeptLesson } from '../../../../src-core/contract/keeping-view.ts';

describe('the name of a hand-in', () => {
  test.each([
    ['marks', 'oneroster', 'marks.zip'],
    ['marks.csv', 'oneroster', 'marks.zip'],
    ['marks.csv', 'xlsx', 'marks.xlsx'],
    ['9 Kelp 15.05.', 'xlsx', '9 Kelp 15.05..xlsx'],
    ['marks.zip', 'oneroster', 'marks.zip'],
    [' marks.txt ', 'csv', 'marks.txt'],
    ['', 'xlsx', ''],
  ] as const)('%s as %s is %s', (typed, kind, name) => {
    expect(getFullName(typed, kind)).toBe(name);
  });

  test('begins with the lesson’s, and says what is printed', () => {
    expect(suggestName('2025-05-15 kelp.csv', 'csv')).toBe('2025-05-15 kelp.csv');
    expect(suggestName('2025-05-15 kelp.csv', 'pupil-slips')).toBe('2025-05-15 kelp pupil-slips.pdf');
  });
});

test('stills and films of the cache are told apart from what was read, for they show pupils too', () => {
  const files = [
    'clips/teal/a.mov',
    'clips/teal/b.mov',
    'evidence/a.look.json',
    'evidence/stills/a-0-120.jpg',
    'roster.csv',
  ].map((path) => ({ path, bytes: 10 }));
  expect(groupByPart(files)).toEqual([
    { name: 'clips', files: 2, bytes: 20 },
    { name: 'evidence', files: 1, bytes: 10 },
    { name: 'evidence/stills', files: 1, bytes: 10 },
    { name: 'roster.csv', files: 1, bytes: 10 },
  ]);
});

test('the last day that is suggested is the class’s own latest one, never one that is over', () => {
  const other = (date: string, until: string | null, change: Partial<KeptLesson> = {}): KeptLesson => {
    return { lesson: date, title: 'Circuit', className: '9 Kelp', date, until, isOverdue: false, ...change };
  };
  const find = (...others: readonly KeptLesson[]) => findUsualDay({ others } as KeepingView, '9 Kelp');
  expect(find(other('2025-05-01', '2025-06-20'), other('2025-05-08', '2025-06-30'))).toBe('2025-06-30');
  expect(find(other('2025-05-08', null), other('2025-05-01', '2025-06-20'))).toBe('2025-06-20');
  expect(find(other('2025-05-08', '2025-06-30', { className: '8 Brine' }))).toBeNull();
  expect(find(other('2024-05-08', '2024-06-30', { isOverdue: true }))).toBeNull();
});

test('a squad with a pupil on the do-not-film list is named as one without stills', () => {
  const plan = {
    squads: [
      { code: 'teal', name: 'Teal' },
      { code: 'plum', name: 'Plum' },
    ],
  };
  expect(listUnshown({ plan, unshown: ['plum'] } as never)).toEqual(['Plum']);
});

test('every rule of a OneRoster set has words of its own to be ticked by', () => {
  const words = Object.values(BUNDLE_RULE_WORDS).map(({ asks }) => asks);
  expect(new Set(words).size).toBe(words.length);
  expect(words.filter((word) => /[.[\]]$/.test(word))).toEqual([]);
});
