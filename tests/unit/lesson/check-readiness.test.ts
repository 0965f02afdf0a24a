import { describe, expect, test } from 'vitest';
import { CARD_LIMITS } from '../../../src-core/lesson/card-limits.ts';
import { checkReadiness, PINNIE_DISTANCE } from '../../../src-core/lesson/check-readiness.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PINNIES } from '../../../src-core/lesson/squads/pinnies.ts';
import { convertToLab, parseHexColour } from '../../../src-core/platform/cielab.ts';
import { buildSmallPlan } from './small-plan.ts';

function problemsAfter(change: (plan: Plan) => void) {
  const plan = buildSmallPlan();
  change(plan);
  return checkReadiness(plan);
}

const station = (plan: Plan, at = 0) => plan.stations[at] as Plan['stations'][number];
const squad = (plan: Plan, at = 0) => plan.squads[at] as Plan['squads'][number];

describe('the check of a plan for class', () => {
  test('finds nothing in a sound plan', () => {
    expect(checkReadiness(buildSmallPlan())).toEqual([]);
  });

  const cases: readonly [string, (plan: Plan) => void, readonly object[]][] = [
    [
      'a text longer than its card has room for',
      (plan) => {
        station(plan).caution = 'a'.repeat(CARD_LIMITS.caution + 1);
      },
      [{ code: 'plan-text-too-long', path: 'stations[0].caution', length: 121, limit: 120 }],
    ],
    [
      'a word that is wider than the card, unless a hyphen parts it',
      (plan) => {
        station(plan).exercise = `${'n'.repeat(17)}-${'u'.repeat(17)}`;
        station(plan).caution = `Mind the ${'n'.repeat(34)}`;
        station(plan, 1).exercise = 'n'.repeat(19);
      },
      [
        { code: 'plan-word-too-long', path: 'stations[0].caution', word: 'n'.repeat(34) },
        { code: 'plan-word-too-long', path: 'stations[1].exercise', word: 'n'.repeat(19) },
      ],
    ],
    [
      'what has no room in the heads of sheets, on labels and on the briefing',
      (plan) => {
        plan.lesson.title = 'a '.repeat(31);
        squad(plan).name = 'Oystercatcherspotters';
        squad(plan, 1).tablet = 'The one with the crack in its corner';
        plan.briefing.rules.push('n'.repeat(34));
      },
      [
        { code: 'plan-text-too-long', path: 'lesson.title', length: 62, limit: 60 },
        { code: 'plan-word-too-long', path: 'squads[0].name', word: 'Oystercatcherspotters' },
        { code: 'plan-text-too-long', path: 'squads[1].tablet', length: 36, limit: 24 },
        { code: 'plan-word-too-long', path: 'briefing.rules[0]', word: 'n'.repeat(34) },
      ],
    ],
    [
      'a station that nothing leads to, where others have a clue',
      (plan) => {
        station(plan).clue = 'Where the pier ends';
      },
      [{ code: 'plan-clue-missing', path: 'stations[1].clue', station: 'B' }],
    ],
    [
      'more squads than stations that are open',
      (plan) => plan.rotation.leftOut.push('B'),
      [
        { code: 'plan-too-many-squads', path: 'squads', squads: 2, stations: 1 },
        { code: 'plan-left-out-visited', path: 'squads[0].route[1]', squad: 'teal', station: 'B' },
        { code: 'plan-left-out-visited', path: 'squads[1].route[0]', squad: 'plum', station: 'B' },
      ],
    ],
    [
      'a squad that begins elsewhere than was fixed',
      (plan) =>
        plan.rotation.fixedStarts.push({ squad: 'teal', station: 'A' }, { squad: 'plum', station: 'A' }),
      [{ code: 'plan-start-not-kept', path: 'squads[1].route[0]', squad: 'plum', station: 'A' }],
    ],
    [
      'pinnies of nearly one colour',
      (plan) => {
        squad(plan, 1).pinnie.colour = '#2F9A96';
      },
      [{ code: 'plan-pinnies-alike', path: 'squads[1].pinnie.colour', squads: ['teal', 'plum'] }],
    ],
    [
      'a criterion tagged with a standard that the plan does not list',
      (plan) => plan.rubric.clip[1]?.standards.push('s5'),
      [{ code: 'plan-standard-unknown', path: 'rubric.clip[1].standards[0]', standard: 's5' }],
    ],
    [
      'a fixed start of a squad that is not there',
      (plan) => plan.rotation.fixedStarts.push({ squad: 'mauve', station: 'A' }),
      [{ code: 'plan-squad-unknown', path: 'rotation.fixedStarts[0].squad', squad: 'mauve' }],
    ],
    [
      'a distance to a station that is not there',
      (plan) => plan.rotation.distances.push({ between: ['A', 'Z'], metres: 10 }),
      [{ code: 'plan-rotation-station-unknown', path: 'rotation.distances[0].between', station: 'Z' }],
    ],
    [
      'a route over a leg that the rotation forbids',
      (plan) => plan.rotation.forbidden.push(['B', 'A']),
      [{ code: 'plan-leg-forbidden', path: 'squads[1].route[1]', squad: 'plum', leg: ['B', 'A'] }],
    ],
    [
      'a warm-up that leaves no time',
      (plan) => {
        plan.timing.warmUpMinutes = 41;
      },
      [{ code: 'plan-timing-too-long', path: 'timing', minutes: 46, periodMinutes: 45 }],
    ],
    [
      'reps that no tempo fits into a slot',
      (plan) => {
        // 34 minutes of work in two slots are 1020 seconds.
        Object.assign(station(plan), { reps: 200, cycleSeconds: [6, 8] });
      },
      [
        {
          code: 'plan-reps-too-many',
          path: 'stations[0].reps',
          station: 'A',
          neededSeconds: 1200,
          slotSeconds: 1020,
        },
      ],
    ],
    [
      'reps that would fit but for the way there',
      (plan) => {
        Object.assign(station(plan), { reps: 100, cycleSeconds: [7, 8] });
        plan.rotation.distances.push({ between: ['A', 'B'], metres: 360 });
      },
      [
        {
          code: 'plan-slot-too-short',
          path: 'stations[0]',
          neededSeconds: 700 + 45 + 300,
          slotSeconds: 1020,
        },
      ],
    ],
  ];

  test.each(cases)('names %s', (_, change, expected) => {
    expect(problemsAfter(change)).toEqual(expected.map((facts) => expect.objectContaining(facts)));
  });

  test('reckons two reps a cycle where sides are counted, and a station at the start without a way', () => {
    const change = (plan: Plan) =>
      Object.assign(station(plan), { reps: 200, cycleSeconds: [6, 8], counting: 'side' });
    expect(problemsAfter(change)).toEqual([]);
  });

  test('asks for no clue to the station that every squad begins at', () => {
    expect(
      problemsAfter((plan) => {
        station(plan, 1).clue = 'Where the nets dry';
        plan.squads.pop();
      }),
    ).toEqual([]);
  });
});

describe('the distance that pinnies must have', () => {
  const distance = (one: string, other: string) => {
    const [a, b] = [one, other].map((colour) => convertToLab(parseHexColour(colour)));
    return Math.hypot(...[0, 1, 2].map((axis) => (a?.[axis] ?? 0) - (b?.[axis] ?? 0)));
  };

  test('lets the desk’s eight pinnies pass, and not a colour with a darker one of the same name', () => {
    const pairs = PINNIES.flatMap((one, at) =>
      PINNIES.slice(at + 1).map((other) => distance(one.colour, other.colour)),
    );
    expect(Math.min(...pairs)).toBeCloseTo(27.9, 1);
    expect(PINNIE_DISTANCE).toBeLessThan(Math.min(...pairs));
    expect(distance('#FF0000', '#CC0000')).toBeCloseTo(19.4, 1);
    expect(PINNIE_DISTANCE).toBeGreaterThan(distance('#FF0000', '#CC0000'));
  });
});
