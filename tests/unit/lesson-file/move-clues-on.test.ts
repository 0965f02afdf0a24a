import { expect, test } from 'vitest';
import { moveCluesOn } from '../../../src-core/lesson-file/move-clues-on.ts';

const clue = (code: string, text?: string) => (text === undefined ? { code } : { code, clue: text });

test('a clue that led away from a station now leads to the next one, around the route', () => {
  const before = {
    stations: [clue('A', 'to B'), clue('B', 'to C'), clue('C', 'to A')],
    squads: [{ route: ['B', 'C', 'A'] }, { route: ['A', 'B', 'C'] }],
  };
  expect(moveCluesOn(before).stations).toEqual([clue('A', 'to A'), clue('B', 'to B'), clue('C', 'to C')]);
});

test('a station that had no clue passes none on, and a clue on no route is dropped', () => {
  const before = {
    stations: [clue('A'), clue('B', 'to A'), clue('C', 'nowhere')],
    squads: [{ route: ['A', 'B'] }],
  };
  expect(moveCluesOn(before).stations).toEqual([clue('A', 'to A'), clue('B'), clue('C')]);
});

test('content of no shape at all goes through, for the schema to name what is wrong', () => {
  expect(moveCluesOn({ stations: 3, squads: null })).toMatchObject({ stations: [] });
});
