import { describe, expect, test } from 'vitest';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import { walkOften } from '../../../src-core/lesson/walk/walk-often.ts';
import { type WalkOptions, walkPlan } from '../../../src-core/lesson/walk/walk-plan.ts';
import { getRawPlan } from './small-plan.ts';

/** Three stations of ten reps of two to two seconds; squads along these routes. */
function build(routes: readonly string[], tempo: readonly [number, number] = [2, 2]) {
  const raw = getRawPlan();
  const [squad] = raw.squads;
  return planSchema.parse({
    ...raw,
    stations: [...'ABC'].map((code) => ({
      code,
      place: `Post ${code}`,
      exercise: 'Squat reaches',
      reps: 10,
      cycleSeconds: tempo,
    })),
    squads: routes.map((route, at) => ({
      ...squad,
      code: `s${at}`,
      name: `Squad ${at}`,
      tablet: `t${at}`,
      startsAt: route[0],
      route: [...route],
    })),
  });
}

/** No chance and no extras: a visit takes thirty seconds, a leg sixty. */
const PLAIN: Partial<WalkOptions> = { paceSpread: 0, setUpSeconds: 10, legSeconds: 60 };

describe('a simulated walk', () => {
  test('of squads at one pace on a sound rotation has no queue, and ends when the sum of its parts says', () => {
    const { visits, queues, endSeconds, workSeconds } = walkPlan(build(['ABC', 'BCA', 'CAB']), PLAIN);
    expect(queues).toEqual([]);
    expect(endSeconds).toBe(3 * 30 + 2 * 60);
    expect(workSeconds).toBe((45 - 11) * 60);
    expect(visits.filter(({ squad }) => squad === 's1')).toEqual([
      { squad: 's1', slot: 0, station: 'B', arriveSeconds: 0, startSeconds: 0, endSeconds: 30 },
      { squad: 's1', slot: 1, station: 'C', arriveSeconds: 90, startSeconds: 90, endSeconds: 120 },
      { squad: 's1', slot: 2, station: 'A', arriveSeconds: 180, startSeconds: 180, endSeconds: 210 },
    ]);
  });

  test('of two squads sent to one place at once has the second wait as long as the first works', () => {
    const { queues } = walkPlan(build(['AB', 'AC']), PLAIN);
    expect(queues).toEqual([
      {
        station: 'A',
        slot: 0,
        squads: { waiting: 's1', working: 's0' },
        atSeconds: 0,
        waitSeconds: 30,
      },
    ]);
  });

  test('takes distance, transit, clue and sides into account', () => {
    const plan = build(['AB']);
    plan.rotation.distances.push({ between: ['B', 'A'], metres: 120 });
    Object.assign(plan.stations[1] ?? {}, { transit: 'One lap', clue: 'By the water', counting: 'side' });
    const { visits } = walkPlan(plan, { ...PLAIN, metresPerSecond: 1.2, transitSeconds: 40, clueSeconds: 5 });
    expect(visits[1]?.arriveSeconds).toBe(30 + 100 + 40 + 5);
    expect((visits[1]?.endSeconds ?? 0) - (visits[1]?.startSeconds ?? 0)).toBe(10 + 10);
  });

  test('is the same for the same seed, and no squad is ever at a station with another', () => {
    const plan = build(['ABC', 'BCA', 'CAB'], [1, 8]);
    expect(walkPlan(plan, { seed: 5 })).toEqual(walkPlan(plan, { seed: 5 }));
    expect(walkPlan(plan, { seed: 5 }).visits).not.toEqual(walkPlan(plan, { seed: 6 }).visits);
    for (let seed = 0; seed < 200; seed += 1) {
      const { visits } = walkPlan(plan, { seed, paceSpread: 0.6 });
      for (const one of visits)
        for (const other of visits)
          if (one !== other && one.station === other.station)
            expect(one.endSeconds <= other.startSeconds || other.endSeconds <= one.startSeconds).toBe(true);
    }
  });
});

/** 34 minutes are too short for three times sixty reps of twenty seconds. */
function buildBusy() {
  const plan = build(['ABC'], [19, 20]);
  return { ...plan, stations: plan.stations.map((station) => ({ ...station, reps: 60 })) };
}

describe('fifty simulated walks', () => {
  test('say in how many a squad waits, which single ones do not', () => {
    const often = walkOften(build(['ABC', 'BCA', 'CAB'], [2, 9]), 20);
    const singly = Array.from({ length: 50 }, (_, at) =>
      walkPlan(build(['ABC', 'BCA', 'CAB'], [2, 9]), { seed: at + 1 }),
    );
    expect(often.walks).toBe(50);
    expect(often.waiting).toBe(
      singly.filter(({ queues }) => queues.some(({ waitSeconds }) => waitSeconds >= 20)).length,
    );
    expect(often.waiting).toBeGreaterThan(0);
    expect(often.waiting).toBeLessThan(50);
    expect(often.late).toBe(0);
    expect(often.latestEndSeconds).toBe(Math.max(...singly.map(({ endSeconds }) => endSeconds)));
  });

  test('of one squad have nobody who waits, and of one with too much to do are all late', () => {
    expect(walkOften(build(['ABC']), 20)).toMatchObject({ waiting: 0, late: 0 });
    expect(walkOften(buildBusy(), 20)).toMatchObject({ waiting: 0, late: 50 });
  });
});
