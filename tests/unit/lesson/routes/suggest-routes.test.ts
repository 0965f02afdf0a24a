import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Distance } from '../../../../src-core/lesson/routes/leg-costs.ts';
import type { Leg } from '../../../../src-core/lesson/routes/route-problem.ts';
import { type RouteOrder, suggestRoutes } from '../../../../src-core/lesson/routes/suggest-routes.ts';

const LETTERS = [...'ABCDEFGHIJKL'];

function order(stations: number, squads: number, over: Partial<RouteOrder> = {}): RouteOrder {
  return {
    stations: LETTERS.slice(0, stations),
    squads: Array.from({ length: squads }, (_, at) => ({ code: `s${at}`, start: null })),
    design: 'cyclic',
    forbidden: [],
    distances: [],
    seed: 1,
    ...over,
  };
}

function routesOf(wanted: RouteOrder): readonly string[] {
  const found = suggestRoutes(wanted);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value.routes.map(({ route }) => route.join(''));
}

const problemOf = (wanted: RouteOrder) => suggestRoutes(wanted).problems[0];

/** Places on a line, ten metres apart, in this order. */
function onALine(places: string): Distance[] {
  return [...places].flatMap((one, at) =>
    [...places].slice(at + 1).map((other, further) => ({
      between: [one, other] as const,
      metres: 10 * (further + 1),
    })),
  );
}

const anyOrder = fc
  .record({
    stations: fc.integer({ min: 3, max: 12 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    design: fc.constantFrom<'cyclic' | 'balanced'>('cyclic', 'balanced'),
    seed: fc.nat(999),
    start: fc.nat(11),
  })
  .map(({ stations, share, design, seed, start }) => {
    const wanted = order(stations, 1 + Math.floor(share * (stations - 0.001)), { design, seed });
    const squads = wanted.squads.map((squad, at) =>
      at === 0 ? { ...squad, start: LETTERS[start % stations] ?? null } : squad,
    );
    return { ...wanted, squads };
  });

describe('suggested routes', () => {
  test('of any number of stations visit each once, never meet, and begin where they must', () => {
    fc.assert(
      fc.property(anyOrder, (wanted) => {
        const found = suggestRoutes(wanted);
        if (!found.ok) throw new Error(JSON.stringify(found.problems));
        const { routes, nature } = found.value;
        expect(nature.isFreeOfMeetings).toBe(true);
        for (const { route } of routes) expect(route.toSorted()).toEqual(wanted.stations);
        expect(routes[0]?.route[0]).toBe(wanted.squads[0]?.start);
        if (routes.length === wanted.stations.length) expect(nature.isLatin).toBe(true);
        const isWholeEven = routes.length === wanted.stations.length && routes.length % 2 === 0;
        if (wanted.design === 'balanced' && isWholeEven) expect(nature.isBalanced).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test('never hold a forbidden leg, and a refusal names legs of which every one is needed', () => {
    const legs = fc.uniqueArray(fc.tuple(fc.nat(4), fc.nat(4)), { maxLength: 14, selector: String });
    fc.assert(
      fc.property(legs, fc.constantFrom<'cyclic' | 'balanced'>('cyclic', 'balanced'), (drawn, design) => {
        const forbidden = drawn
          .filter(([from, to]) => from !== to)
          .map(([from, to]): Leg => [LETTERS[from] ?? '', LETTERS[to] ?? '']);
        const wanted = order(5, 3, { design, forbidden });
        const found = suggestRoutes(wanted);
        if (found.ok) {
          const walked = found.value.routes.flatMap(({ route }) =>
            route.slice(1).map((to, at) => `${route[at]}${to}`),
          );
          for (const leg of forbidden) expect(walked).not.toContain(leg.join(''));
          return;
        }
        const [problem] = found.problems;
        if (problem?.code !== 'routes-legs-needed') throw new Error(problem?.code);
        expect(suggestRoutes({ ...wanted, forbidden: problem.legs }).ok).toBe(false);
        for (const leg of problem.legs) {
          const others = problem.legs.filter((one) => one !== leg);
          expect(suggestRoutes({ ...wanted, forbidden: others }).ok).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('keep the given order where nothing speaks against it, with starts far apart', () => {
    expect(routesOf(order(6, 3))).toEqual(['ABCDEF', 'CDEFAB', 'EFABCD']);
    expect(routesOf(order(4, 4, { design: 'balanced' }))).toEqual(['ABDC', 'BCAD', 'CDBA', 'DACB']);
  });

  test('walk no more than the shortest round does', () => {
    // Six places on a line, told in a bad order: there and back is 100 metres, however they are told.
    const { value } = suggestRoutes(order(6, 6, { distances: onALine('AFBECD') })) as Extract<
      ReturnType<typeof suggestRoutes>,
      { ok: true }
    >;
    const [first] = value.routes;
    const last = first?.route.at(-1);
    const back = onALine('AFBECD').find(
      ({ between }) => between.includes(first?.route[0] ?? '') && between.includes(last ?? ''),
    );
    expect((first?.metres ?? 0) + (back?.metres ?? 0)).toBe(100);
    expect(value.longestLeg?.metres).toBeLessThanOrEqual(20);
  });

  test('of a squad alone go one way, and need not come back', () => {
    expect(routesOf(order(5, 1, { distances: onALine('CADBE') }))[0]).toMatch(/^(CADBE|EBDAC)$/);
    const alone = order(3, 1, { squads: [{ code: 's0', start: 'B' }], forbidden: [['A', 'B']] });
    expect(routesOf(alone)[0]).toMatch(/^B/);
  });

  test('name as the longest leg one whose distance was given', () => {
    const given = (distances: Distance[]) => suggestRoutes(order(4, 4, { distances })) as { value?: object };
    expect(given([{ between: ['A', 'B'], metres: 30 }]).value).toMatchObject({
      longestLeg: { leg: ['A', 'B'], metres: 30 },
    });
    // The mean of what was given, 65 m, stands for every other leg and is nobody's measure.
    const far: Distance[] = [
      { between: ['A', 'B'], metres: 30 },
      { between: ['A', 'C'], metres: 100 },
    ];
    const { longestLeg } = given(far).value as { longestLeg: { metres: number } };
    expect([30, 100]).toContain(longestLeg.metres);
    expect(given([]).value).toMatchObject({ longestLeg: null });
  });

  test('are others with the next seed, without a meeting, and as short', () => {
    const metres = (wanted: RouteOrder) => {
      const found = suggestRoutes(wanted);
      return (found.ok ? found.value.routes : []).reduce((sum, route) => sum + (route.metres ?? 0), 0);
    };
    for (const design of ['cyclic', 'balanced'] as const) {
      for (const distances of [[], onALine('AFBECD')]) {
        // Of a balanced design's rows one may be the shortest, and one squad alone has no other to change with.
        const alone = design === 'balanced' && distances.length > 0 ? [] : [1];
        for (const squads of [...alone, 2, 4, 6]) {
          const first = order(6, squads, { design, distances });
          const second = { ...first, seed: 2 };
          const which = `${design}, ${squads} squads, ${distances.length} distances`;
          expect(routesOf(second), which).not.toEqual(routesOf(first));
          expect(metres(second), which).toBeCloseTo(metres(first), 6);
          expect(suggestRoutes(second), which).toMatchObject({
            value: { nature: { isFreeOfMeetings: true } },
          });
        }
      }
    }
    const fixed = order(6, 3).squads.map((squad, at) => (at === 0 ? { ...squad, start: 'D' } : squad));
    const [one, other] = [1, 2].map((seed) => routesOf(order(6, 3, { squads: fixed, seed })));
    expect(other).not.toEqual(one);
    expect(other?.[0]?.[0]).toBe('D');
  });

  test('are the same for the same seed', () => {
    const wanted = order(9, 5, { design: 'balanced', distances: onALine('IAHBGCFDE'), seed: 7 });
    expect(routesOf(wanted)).toEqual(routesOf(wanted));
  });
});

describe('no routes', () => {
  test('for more squads than stations, whatever the design', () => {
    for (const design of ['cyclic', 'balanced'] as const)
      expect(problemOf(order(4, 5, { design }))).toEqual({
        code: 'routes-too-many-squads',
        squads: 5,
        stations: 4,
      });
  });

  test('where two squads must begin at one station, or one where no route goes', () => {
    const squads = ['s0', 's1'].map((code) => ({ code, start: 'B' }));
    expect(problemOf(order(4, 2, { squads }))).toEqual({
      code: 'routes-start-twice',
      station: 'B',
      squads: ['s0', 's1'],
    });
    expect(problemOf(order(2, 1, { squads: [{ code: 's0', start: 'Z' }] }))).toEqual({
      code: 'routes-start-unknown',
      squad: 's0',
      station: 'Z',
    });
  });

  test('where a whole even balanced square would need a forbidden leg, and that leg alone is named', () => {
    const forbidden: Leg[] = [['A', 'C']];
    expect(problemOf(order(8, 8, { design: 'balanced', forbidden }))).toEqual({
      code: 'routes-legs-needed',
      design: 'balanced',
      legs: [['A', 'C']],
    });
    expect(suggestRoutes(order(8, 8, { forbidden })).ok).toBe(true);
  });

  test('where every way into a station is shut; legs that do no harm are not blamed', () => {
    const into = ['A', 'B', 'C'].map((from): Leg => [from, 'D']);
    expect(problemOf(order(4, 2, { forbidden: [['A', 'C'], ...into] }))).toEqual({
      code: 'routes-legs-needed',
      design: 'cyclic',
      legs: into,
    });
  });

  test('without squads or stations', () => {
    expect(problemOf(order(4, 0))?.code).toBe('routes-without-squads');
    expect(problemOf(order(0, 1))?.code).toBe('routes-without-stations');
  });
});
