import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSquadSigns, PINNIES } from '../../../src-core/lesson/squads/pinnies.ts';
import { type SquadsOrder, suggestSquads } from '../../../src-core/lesson/squads/suggest-squads.ts';

const ids = (count: number) => Array.from({ length: count }, (_, at) => `p${at + 1}`);

function order(pupils: number, count: number, over: Partial<SquadsOrder['grouping']> = {}): SquadsOrder {
  return {
    pupils: ids(pupils),
    count,
    present: [],
    grouping: { seed: 1, apart: [], together: [], ...over },
  };
}

function squadsOf(wanted: SquadsOrder) {
  const found = suggestSquads(wanted);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}

describe('suggested squads', () => {
  test('hold every pupil once, in sizes that differ by one at most', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 45 }),
        fc.integer({ min: 1, max: 8 }),
        fc.nat(999),
        (pupils, count, seed) => {
          fc.pre(count <= pupils);
          const squads = squadsOf(order(pupils, count, { seed }));
          expect(squads.flatMap((squad) => squad.pupils).toSorted()).toEqual(ids(pupils).toSorted());
          const sizes = squads.map((squad) => squad.pupils.length);
          expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  test('keep pupils together and apart as the teacher says', () => {
    const rule = fc.uniqueArray(fc.constantFrom(...ids(24)), { minLength: 2, maxLength: 3 });
    const rules = fc.record({
      apart: fc.array(rule, { maxLength: 6 }),
      together: fc.array(rule, { maxLength: 3 }),
    });
    fc.assert(
      fc.property(rules, fc.nat(999), ({ apart, together }, seed) => {
        const found = suggestSquads(order(24, 5, { seed, apart, together }));
        if (!found.ok) {
          expect(found.problems.map(({ code }) => code)).toEqual([expect.stringMatching(/^squads-rules-/)]);
          return;
        }
        const squadOf = new Map(
          found.value.flatMap(({ code, pupils }) => pupils.map((pupil) => [pupil, code])),
        );
        for (const list of together) expect(new Set(list.map((pupil) => squadOf.get(pupil))).size).toBe(1);
        for (const list of apart)
          expect(new Set(list.map((pupil) => squadOf.get(pupil))).size).toBe(list.length);
      }),
    );
  });

  test('are the same for the same seed, and others for another', () => {
    const print = (seed: number) => squadsOf(order(24, 4, { seed })).map(({ pupils }) => pupils.join());
    expect(print(3)).toEqual(print(3));
    expect(print(3)).not.toEqual(print(4));
  });

  test('differ in size by more where friends ask for it, and say so', () => {
    const found = suggestSquads(order(8, 4, { together: [['p1', 'p2', 'p3', 'p4']] }));
    expect(found.ok).toBe(true);
    expect(found.problems).toEqual([{ code: 'squads-uneven', smallest: 1, largest: 4 }]);
  });

  test('pass over a rule about somebody who is not there, and say so', () => {
    expect(suggestSquads(order(6, 2, { apart: [['p1', 'gone']] })).problems).toEqual([
      { code: 'squads-pupil-unknown', pupil: 'gone' },
    ]);
  });
});

describe('no squads', () => {
  test('where two are to be apart whom rules for together join, over a third too', () => {
    const together = [
      ['p1', 'p2'],
      ['p2', 'p3'],
    ];
    expect(suggestSquads(order(6, 2, { together, apart: [['p1', 'p3']] })).problems).toEqual([
      { code: 'squads-rules-contradict', pupils: ['p1', 'p3'], together: ['p1', 'p2', 'p3'] },
    ]);
  });

  test('where more are to be apart than there are squads; rules that do no harm are not blamed', () => {
    const apart = [
      ['p5', 'p6'],
      ['p1', 'p2'],
      ['p2', 'p3'],
      ['p1', 'p3'],
    ];
    expect(suggestSquads(order(6, 2, { apart })).problems).toEqual([
      {
        code: 'squads-rules-too-many',
        rules: [
          ['p1', 'p2'],
          ['p2', 'p3'],
          ['p1', 'p3'],
        ].map((pupils) => ({ kind: 'apart', pupils })),
      },
    ]);
  });

  test('for more squads than pupils, or for nobody', () => {
    expect(suggestSquads(order(3, 4)).problems).toEqual([{ code: 'squads-too-many', squads: 4, pupils: 3 }]);
    expect(suggestSquads(order(0, 1)).problems).toEqual([{ code: 'squads-without-pupils' }]);
  });
});

describe('signs of squads', () => {
  test('stay with the squads there are; new ones get free pinnies and tablets', () => {
    const [first] = buildSquadSigns(1, []);
    const present = [
      { ...first, code: 'gulls', name: 'Gulls', pinnie: PINNIES[1], tablet: 'Tablet 2' },
    ] as never;
    const signs = buildSquadSigns(8, present);
    expect(signs[0]).toMatchObject({ code: 'gulls', tablet: 'Tablet 2' });
    expect(signs[1]).toMatchObject({ code: 'teal', name: 'Teal', tablet: 'Tablet 3' });
    expect(new Set(signs.map(({ pinnie }) => pinnie.colour)).size).toBe(8);
    expect(new Set(signs.map(({ tablet }) => tablet)).size).toBe(8);
  });

  test('beyond eight are numbered', () => {
    const signs = buildSquadSigns(10, []);
    expect(new Set(signs.map(({ code }) => code)).size).toBe(10);
    expect(signs[8]?.pinnie).toEqual({ name: 'teal 9', colour: PINNIES[0]?.colour });
    // The ninth was taken out again, and the tenth is still there.
    const again = buildSquadSigns(10, signs.toSpliced(8, 1));
    expect(new Set(again.map(({ code }) => code)).size).toBe(10);
  });
});
