import { describe, expect, test } from 'vitest';
import { describeRoutes } from '../../src-core/lesson/routes/describe-routes.ts';
import { buildWilliamsRows } from '../../src-core/lesson/routes/williams.ts';

/** Rows as the sources print them: stations from 1. */
const print = (rows: readonly (readonly number[])[] | null) =>
  (rows ?? []).map((row) => row.map((station) => station + 1).join(' '));
const routes = (text: string) => text.split('/').map((row) => [...row]);
const asRoutes = (rows: readonly (readonly number[])[]) => rows.map((row) => row.map(String));

describe('Williams designs', () => {
  test('of ten have the first rows that R package crossdes prints, help page “williams”', () => {
    expect(print(buildWilliamsRows(10).square).slice(0, 2)).toEqual([
      '1 2 10 3 9 4 8 5 7 6',
      '2 3 1 4 10 5 9 6 8 7',
    ]);
  });

  test('of three have the six rows of the same page', () => {
    const { square, mirror } = buildWilliamsRows(3);
    expect(new Set([...print(square), ...print(mirror)])).toEqual(
      new Set(['1 2 3', '2 3 1', '3 1 2', '3 2 1', '1 3 2', '2 1 3']),
    );
  });

  test('of six have the first rows of “Counterbalancing for Immediate Sequential Effects”', () => {
    expect(print(buildWilliamsRows(6).square).slice(0, 3)).toEqual([
      '1 2 6 3 5 4',
      '2 3 1 4 6 5',
      '3 4 2 5 1 6',
    ]);
  });

  test.each([4, 6, 8, 10, 12])('of an even %d walk every leg exactly once', (size) => {
    const { square, mirror } = buildWilliamsRows(size);
    expect(mirror).toBeNull();
    const { isLatin, isBalanced, legs } = describeRoutes(asRoutes(square));
    expect({ isLatin, isBalanced, legs }).toEqual({
      isLatin: true,
      isBalanced: true,
      legs: { distinct: size * (size - 1), possible: size * (size - 1), least: 1, most: 1 },
    });
  });

  test.each([3, 5, 7, 9, 11])(
    'of an odd %d walk every leg twice over both halves, and neither half does',
    (size) => {
      const { square, mirror } = buildWilliamsRows(size);
      const both = describeRoutes(asRoutes([...square, ...(mirror ?? [])]));
      expect(both.legs).toMatchObject({ least: 2, most: 2 });
      expect(both.isFreeOfMeetings).toBe(false);
      expect(describeRoutes(asRoutes(square))).toMatchObject({ isLatin: true, isBalanced: false });
      expect(describeRoutes(asRoutes(mirror ?? []))).toMatchObject({ isLatin: true, isBalanced: false });
    },
  );
});

describe('squares of other kinds', () => {
  // Alexander Weichart (alexanderweichart.de) prints this square as balanced; eight of its twelve legs occur.
  test('ABCD/BADC/CDAB/DCBA is Latin, and not balanced', () => {
    expect(describeRoutes(routes('ABCD/BADC/CDAB/DCBA'))).toEqual({
      isFreeOfMeetings: true,
      isLatin: true,
      isBalanced: false,
      legs: { distinct: 8, possible: 12, least: 0, most: 2 },
    });
  });

  test('nor is the cyclic one, which walks four legs three times each', () => {
    expect(describeRoutes(routes('ABCD/BCDA/CDAB/DABC'))).toMatchObject({
      isLatin: true,
      isBalanced: false,
      legs: { distinct: 4, least: 0, most: 3 },
    });
  });

  test('two squads at one station in a slot make it no square at all', () => {
    expect(describeRoutes(routes('ABCD/BADC/CDAB/DCAB'))).toMatchObject({
      isFreeOfMeetings: false,
      isLatin: false,
    });
  });
});
