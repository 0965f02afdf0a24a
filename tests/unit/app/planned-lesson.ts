import fc from 'fast-check';
import { CARD_LIMITS } from '../../../src-core/lesson/card-limits.ts';
import { BUILT_IN_EXERCISES } from '../../../src-core/lesson/library/built-in.ts';
import { takeExercise } from '../../../src-core/lesson/library/library.ts';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import { buildRouteOrder, withRoutes } from '../../../src-core/lesson/routes/plan-routes.ts';
import { suggestRoutes } from '../../../src-core/lesson/routes/suggest-routes.ts';
import { buildSquadSigns } from '../../../src-core/lesson/squads/pinnies.ts';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

const CODES = [...'ABCDEFGH'];

/** Words of every usual length, in the scripts that paper has letters for. */
const WORDS = [
  ...['to', 'quay', 'rail', 'slowly', 'buoy', 'halyard', 'breakwater', 'companionway', '24'],
  ...['brasse-carrée', 'åkerøy', 'προκυμαία', 'перекладина', 'Wattwanderung'],
];

/** Text of up to so many characters, often just as many as may be. */
const words = (limit: number) =>
  fc
    .record({ length: fc.oneof(fc.constant(limit), fc.integer({ min: 4, max: limit })), seed: fc.nat(9999) })
    .map(({ length, seed }) => {
      const random = seededRandom(seed);
      let text = 'quay';
      for (let tries = 0; tries < 40; tries++) {
        const longer = `${text} ${WORDS[Math.floor(random() * WORDS.length)]}`;
        if (longer.length <= length) text = longer;
      }
      return text;
    });

/** What a teacher may write on a station's cards beside the exercise that was chosen, as long as the check lets it be. */
const cardTexts = fc.record(
  {
    place: words(CARD_LIMITS.place),
    exercise: words(CARD_LIMITS.exercise),
    caution: words(CARD_LIMITS.caution),
    easier: words(CARD_LIMITS.easier),
    harder: words(CARD_LIMITS.harder),
    countsAs: words(CARD_LIMITS.countsAs),
    transit: words(CARD_LIMITS.transit),
    equipment: words(CARD_LIMITS.equipment),
  },
  { requiredKeys: [] },
);

const briefing = fc.record(
  {
    objective: words(160),
    rules: fc.array(words(120), { maxLength: 12 }),
    cautions: fc.array(words(120), { maxLength: 12 }),
    words: fc.array(fc.record({ word: words(30), meaning: words(120) }), { maxLength: 12 }),
  },
  { requiredKeys: [] },
);

const eight = <Value>(one: fc.Arbitrary<Value>) => fc.array(one, { minLength: 8, maxLength: 8 });

/** A plan as a teacher might make it with the planner, routes included; some do not stand the check. */
export const plannedLesson = fc
  .record({
    stations: fc.integer({ min: 3, max: 8 }),
    squads: fc.integer({ min: 1, max: 8 }),
    design: fc.constantFrom('cyclic', 'balanced'),
    seed: fc.nat(9999),
    exercises: eight(fc.constantFrom(...BUILT_IN_EXERCISES)),
    reps: eight(fc.integer({ min: 1, max: 40 })),
    metres: fc.option(fc.array(fc.integer({ min: 5, max: 120 }), { minLength: 7, maxLength: 7 }), {
      nil: [],
    }),
    forbidden: fc.array(fc.tuple(fc.constantFrom(...CODES), fc.constantFrom(...CODES)), { maxLength: 3 }),
    texts: eight(cardTexts),
    clues: fc.option(eight(words(CARD_LIMITS.clue)), { nil: [] }),
    briefing,
  })
  .map(({ stations, squads, design, seed, exercises, reps, metres, forbidden, texts, clues, ...rest }) => {
    const codes = CODES.slice(0, stations);
    const distances = metres.slice(0, stations - 1).map((value, at) => ({
      between: [codes[at], codes[at + 1]],
      metres: value,
    }));
    const plan = planSchema.parse({
      ...getRawPlan(),
      ...rest,
      periods: [{ code: 'p1', start: '09:00', end: '10:15' }],
      stations: codes.map((code, at) => {
        const exercise = exercises[at] ?? BUILT_IN_EXERCISES[0];
        const said = { place: `Post ${code}`, ...(exercise && takeExercise(exercise)), ...texts[at] };
        return { code, reps: reps[at], ...said, ...(clues[at] !== undefined && { clue: clues[at] }) };
      }),
      squads: buildSquadSigns(Math.min(squads, stations), []).map((signs) => ({
        ...signs,
        startsAt: 'A',
        route: ['A'],
      })),
      rotation: {
        design,
        seed,
        distances,
        forbidden: forbidden.filter((leg) => leg.every((one) => codes.includes(one))),
      },
      rubric: {
        clip: [
          { code: 'place', label: 'Right place', checks: 'place' },
          { code: 'reps', label: 'Full reps', checks: 'reps' },
        ],
      },
    });
    const routes = suggestRoutes(buildRouteOrder(plan));
    return { plan: routes.ok ? withRoutes(plan, routes.value) : plan, hasRoutes: routes.ok, seed };
  });
