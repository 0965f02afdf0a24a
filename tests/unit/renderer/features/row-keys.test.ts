import { expect, test } from 'vitest';
import { listRowKeys } from '../../../../renderer/features/plan/row-keys.ts';

test('rows keep their keys when they move, and no two have the same while a code is used twice', () => {
  expect(listRowKeys(['C', 'A', 'B'])).toEqual(['C', 'A', 'B']);
  const keys = listRowKeys(['B', 'B', 'C', 'B']);
  expect(new Set(keys).size).toBe(4);
  expect([keys[0], keys[2]]).toEqual(['B', 'C']);
});
