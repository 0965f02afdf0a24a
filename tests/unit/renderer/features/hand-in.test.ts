import { describe, expect, test } from 'vitest';
import { getFullName } from '../../../../renderer/features/hand-in/file-names.ts';

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
});
