import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlanProblem } from '../../../src-core/lesson/lesson-problem.ts';
import { type Plan, planSchema } from '../../../src-core/lesson/plan.ts';
import {
  buildPlanText,
  PLAN_UPGRADES,
  PLAN_VERSION,
  parsePlan,
} from '../../../src-core/lesson-file/plan-file.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

type RawPlan = ReturnType<typeof getRawPlan>;

function problemsOf(text: string): readonly PlanProblem[] {
  return parsePlan(text).problems;
}

/** Problems of a plan with something changed in its raw JSON. */
function problemsAfter(change: (raw: RawPlan & Record<string, unknown>) => void): readonly PlanProblem[] {
  const raw: RawPlan & Record<string, unknown> = getRawPlan();
  change(raw);
  return problemsOf(JSON.stringify(raw));
}

function getPlan(text: string): Plan {
  const outcome = parsePlan(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

const readFrozen = (version: number) =>
  readFileSync(new URL(`./plan-v${version}.json`, import.meta.url), 'utf8');

describe('reading plan.json', () => {
  test('gives the plan, with what is left out filled in', () => {
    const plan = getPlan(JSON.stringify(getRawPlan()));
    expect(plan).toEqual(planSchema.parse(getRawPlan()));
    expect(plan.retake).toBe('last');
  });

  test('does not mind a byte order mark', () => {
    expect(getPlan(`\uFEFF${JSON.stringify(getRawPlan())}`).lesson.code).toBe('PIER');
  });

  test('names the line and column where a text stops being JSON', () => {
    expect(problemsOf('{\n  "format": "routemark-plan",\n  "version": 1,,\n}')).toEqual([
      { code: 'plan-not-json', line: 3, column: 16 },
    ]);
  });

  test('names the end of a text that was cut short', () => {
    expect(problemsOf('{\n "format"')).toEqual([{ code: 'plan-not-json', line: 2, column: 10 }]);
    expect(problemsOf('')).toEqual([{ code: 'plan-not-json', line: 1, column: 1 }]);
  });

  test.each(['[]', 'null', '3', '{}', '{"format":"routemark-marks","version":1}'])(
    'refuses %s as no plan',
    (text) => {
      expect(problemsOf(text)).toEqual([{ code: 'plan-not-ours' }]);
    },
  );

  test('refuses a newer program’s plan before looking into it', () => {
    expect(problemsOf('{"format":"routemark-plan","version":3,"stars":[]}')).toEqual([
      { code: 'plan-newer', version: 3, newest: 2 },
    ]);
  });

  test.each(['0', '1.5', '"1"', 'null'])('refuses the version %s', (version) => {
    expect(problemsOf(`{"format":"routemark-plan","version":${version}}`)).toMatchObject([
      { code: 'plan-field', path: 'version', expected: 'version' },
    ]);
  });
});

describe('each problem of a plan', () => {
  test.each<[string, (raw: RawPlan & Record<string, unknown>) => void, string, string, string | null]>([
    [
      'a wrong type',
      (raw) => Object.assign(at(raw.stations, 1), { reps: '12' }),
      'stations[1].reps',
      'number',
      null,
    ],
    [
      'half a rep',
      (raw) => Object.assign(at(raw.stations, 1), { reps: 1.5 }),
      'stations[1].reps',
      'integer',
      null,
    ],
    [
      'too few',
      (raw) => Object.assign(at(raw.stations, 0), { reps: 0 }),
      'stations[0].reps',
      'at-least',
      '1',
    ],
    [
      'too many',
      (raw) => Object.assign(at(raw.stations, 0), { reps: 201 }),
      'stations[0].reps',
      'at-most',
      '200',
    ],
    [
      'no route',
      (raw) => Object.assign(at(raw.squads, 0), { route: [] }),
      'squads[0].route',
      'at-least-items',
      '1',
    ],
    ['a key left out', (raw) => Reflect.deleteProperty(raw, 'zone'), 'zone', 'missing', null],
    [
      'an unknown key',
      (raw) => Object.assign(at(raw.stations, 0), { rep: 1 }),
      'stations[0].rep',
      'unknown-key',
      'rep',
    ],
    [
      'a time',
      (raw) => Object.assign(at(raw.periods, 0), { start: '9:00' }),
      'periods[0].start',
      'local-time',
      null,
    ],
    ['a date', (raw) => Object.assign(raw.lesson, { date: '15 May' }), 'lesson.date', 'date', null],
    [
      'a colour',
      (raw) => Object.assign(at(raw.squads, 0).pinnie, { colour: 'teal' }),
      'squads[0].pinnie.colour',
      'colour',
      null,
    ],
    ['an empty name', (raw) => Object.assign(raw.lesson, { title: ' ' }), 'lesson.title', 'some-words', null],
    ['an unknown choice', (raw) => Object.assign(raw, { retake: 'best' }), 'retake', 'one-of', 'first, last'],
    [
      'an unknown award',
      (raw) => Object.assign(raw.rubric, { award: { rule: 'luck' } }),
      'rubric.award.rule',
      'one-of',
      'all-or-nothing, sum',
    ],
    ['text for a list', (raw) => Object.assign(raw, { periods: 'p1' }), 'periods', 'list', null],
    ['a list for a group', (raw) => Object.assign(raw, { lesson: [] }), 'lesson', 'group', null],
  ])('has a path and what was expected: %s', (_, change, ...[path, expected, detail]) => {
    expect(problemsAfter(change)).toContainEqual({ code: 'plan-field', path, expected, detail });
  });

  test('is named, not only the first', () => {
    const problems = problemsAfter((raw) => {
      at(raw.stations, 0).reps = 0;
      at(raw.stations, 1).place = '';
    });
    expect(problems.map((problem) => 'path' in problem && problem.path)).toEqual([
      'stations[0].reps',
      'stations[1].place',
    ]);
  });

  test('carries no sentence of the checking library', () => {
    const value = fc.oneof(fc.jsonValue(), fc.constant({ rule: 'sum', points: -1 }));
    const path = fc.constantFrom(
      'lesson',
      'zone',
      'periods',
      'stations',
      'squads',
      'rubric',
      'scale',
      'gradeSheet',
    );
    fc.assert(
      fc.property(path, value, (key, changed) => {
        for (const problem of problemsAfter((raw) => Object.assign(raw, { [key]: changed }))) {
          expect(problem).toHaveProperty('expected', expect.stringMatching(/^[a-z0-9-]+$/));
        }
      }),
    );
  });
});

describe('writing plan.json', () => {
  test('reads back as the same plan', () => {
    const plan = planSchema.parse(getRawPlan());
    expect(getPlan(buildPlanText(plan))).toEqual(plan);
  });

  test('gives the same text whatever the order of keys was', () => {
    const { format, version, ...rest } = getRawPlan();
    const turned = Object.fromEntries(Object.entries({ ...rest, version, format }).reverse());
    expect(buildPlanText(getPlan(JSON.stringify(turned)))).toBe(
      buildPlanText(planSchema.parse(getRawPlan())),
    );
  });

  test('indents by two spaces and ends the last line', () => {
    expect(buildPlanText(planSchema.parse(getRawPlan()))).toMatch(
      /^\{\n {2}"format": "routemark-plan",\n {2}"version": 2,\n(?:.*\n)*\}\n$/,
    );
  });
});

describe('older versions', () => {
  test.each(Array.from({ length: PLAN_VERSION }, (_, index) => index + 1))(
    'the frozen plan of version %d is read, and written as the newest',
    (version) => {
      const plan = getPlan(readFrozen(version));
      expect(plan.version).toBe(PLAN_VERSION);
      expect(getPlan(buildPlanText(plan))).toEqual(plan);
    },
  );

  test('every one of them has its step', () => {
    expect(Object.keys(PLAN_UPGRADES)).toEqual(
      Array.from({ length: PLAN_VERSION - 1 }, (_, index) => String(index + 1)),
    );
  });

  test('the newest frozen plan is what we write, to the letter', () => {
    const frozen = JSON.parse(readFrozen(PLAN_VERSION));
    expect(JSON.parse(buildPlanText(getPlan(readFrozen(PLAN_VERSION))))).toEqual(frozen);
  });
});

function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new Error(`the small plan has no item ${index}`);
  return item;
}
