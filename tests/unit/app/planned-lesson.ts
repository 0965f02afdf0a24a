import fc from 'fast-check';
import { CARD_LIMITS, HEAD_LIMITS, SQUAD_LIMITS } from '../../../src-core/lesson/card-limits.ts';
import { BUILT_IN_EXERCISES } from '../../../src-core/lesson/library/built-in.ts';
import { takeExercise } from '../../../src-core/lesson/library/library.ts';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import { buildRouteOrder, withRoutes } from '../../../src-core/lesson/routes/plan-routes.ts';
import { suggestRoutes } from '../../../src-core/lesson/routes/suggest-routes.ts';
import { buildSquadSigns } from '../../../src-core/lesson/squads/pinnies.ts';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

const CODES = [...'ABCDEFGHIJ'];

/** Words of every usual length, in the scripts that paper has letters for. */
const WORDS = [
  ...['to', 'quay', 'rail', 'slowly', 'buoy', 'halyard', 'breakwater', 'companionway', '24'],
  ...['brasse-carrée', 'åkerøy', 'προκυμαία', 'перекладина', 'Wattwanderung', 'Kaimauerspringen'],
];

/** Text of up to so many characters, often just as many as may be, and now and then with one long word in it. */
const words = (limit: number) =>
  fc
    .record({
      length: fc.oneof(fc.constant(limit), fc.integer({ min: 4, max: limit })),
      seed: fc.nat(9999),
      long: fc.oneof({ weight: 24, arbitrary: fc.constant(0) }, fc.integer({ min: 10, max: 40 })),
    })
    .map(({ length, seed, long }) => {
      const random = seededRandom(seed);
      let text = long > 0 && long <= length ? 'unbeaten'.repeat(5).slice(0, long) : 'quay';
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
    boundaries: fc.array(words(120), { maxLength: 4 }),
    cautions: fc.array(words(120), { maxLength: 12 }),
    words: fc.array(fc.record({ word: words(30), meaning: words(120) }), { maxLength: 12 }),
  },
  { requiredKeys: [] },
);

const ten = <Value>(one: fc.Arbitrary<Value>) => fc.array(one, { minLength: 10, maxLength: 10 });

/** What stands in the heads of sheets. */
const heads = fc.record(
  {
    title: words(HEAD_LIMITS.title),
    className: words(HEAD_LIMITS.className),
    school: words(HEAD_LIMITS.school),
  },
  { requiredKeys: [] },
);

/** What a squad may be called; numbered, so that no two go by one name. */
const signs = fc.record({ name: words(SQUAD_LIMITS.name - 3), tablet: words(SQUAD_LIMITS.tablet - 3) });

/** A plan as a teacher might make it with the planner, routes included; some do not stand the check. */
export const plannedLesson = fc
  .record({
    stations: fc.integer({ min: 3, max: 10 }),
    squads: fc.integer({ min: 1, max: 8 }),
    design: fc.constantFrom('cyclic', 'balanced'),
    seed: fc.nat(9999),
    exercises: ten(fc.constantFrom(...BUILT_IN_EXERCISES)),
    reps: ten(fc.integer({ min: 1, max: 40 })),
    metres: fc.option(fc.array(fc.integer({ min: 5, max: 120 }), { minLength: 9, maxLength: 9 }), {
      nil: [],
    }),
    forbidden: fc.array(fc.tuple(fc.constantFrom(...CODES), fc.constantFrom(...CODES)), { maxLength: 3 }),
    texts: ten(cardTexts),
    clues: fc.option(ten(words(CARD_LIMITS.clue)), { nil: [] }),
    briefing,
    heads,
    called: fc.option(ten(signs), { nil: [] }),
    films: ten(fc.option(fc.integer({ min: 1, max: 160 }), { nil: null })),
    leftOut: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 2 })),
    start: fc.option(fc.nat(9), { nil: null }),
  })
  .map(({ stations, squads, design, seed, exercises, reps, metres, forbidden, texts, clues, ...rest }) => {
    const { briefing, heads, called, films, leftOut, start } = rest;
    const codes = CODES.slice(0, stations);
    const closed = stations - leftOut < 3 ? [] : codes.slice(0, leftOut);
    const open = codes.filter((code) => !closed.includes(code));
    const raw = getRawPlan();
    const distances = metres.slice(0, stations - 1).map((value, at) => ({
      between: [codes[at], codes[at + 1]],
      metres: value,
    }));
    const plan = planSchema.parse({
      ...raw,
      briefing,
      lesson: { ...raw.lesson, ...heads },
      periods: [{ code: 'p1', start: '09:00', end: '10:15' }],
      stations: codes.map((code, at) => {
        const exercise = exercises[at] ?? BUILT_IN_EXERCISES[0];
        const said = { place: `Post ${code}`, ...(exercise && takeExercise(exercise)), ...texts[at] };
        const film = films[at] ?? 0;
        return {
          code,
          reps: reps[at],
          ...said,
          ...(clues[at] !== undefined && { clue: clues[at] }),
          ...(film > 0 && { demonstration: `https://harbour.example/${'quay-'.repeat(32).slice(0, film)}` }),
        };
      }),
      squads: buildSquadSigns(Math.min(squads, open.length), []).map((usual, at) => ({
        ...usual,
        ...(called[at] && { name: `${called[at].name} ${at}`, tablet: `${called[at].tablet} T${at}` }),
        startsAt: open[0],
        route: [open[0]],
      })),
      rotation: {
        design,
        seed,
        distances,
        leftOut: closed,
        fixedStarts: start === null ? [] : [{ squad: 'teal', station: open[start % open.length] }],
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
