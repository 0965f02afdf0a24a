import { expect, test } from 'vitest';
import { isReadAlike } from '../../../src-core/app/is-read-alike.ts';
import { type Plan, planSchema } from '../../../src-core/lesson/plan.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

const PLAN = planSchema.parse(getRawPlan());
const withFirst = <Row extends object>(rows: readonly Row[], change: Partial<Row>): Row[] =>
  rows.map((row, at) => (at === 0 ? { ...row, ...change } : row));

test.each<[string, Partial<Plan>]>([
  ['the title', { lesson: { ...PLAN.lesson, title: 'Another title' } }],
  ['how often an exercise is done', { stations: withFirst(PLAN.stations, { reps: 77, place: 'Elsewhere' }) }],
  ['a route', { squads: withFirst(PLAN.squads, { route: [], startsAt: 'B' }) }],
  ['the order of marking', { orderRule: 'report' }],
])('clips need no new reading for %s', (_, change) => {
  expect(isReadAlike(PLAN, { ...PLAN, ...change })).toBe(true);
});

test.each<[string, Partial<Plan>]>([
  ['the zone', { zone: 'Pacific/Chatham' }],
  ['the day', { lesson: { ...PLAN.lesson, date: '2031-01-09' } }],
  ['the lesson’s code', { lesson: { ...PLAN.lesson, code: 'ZZ9' } }],
  ['the printing of the cards', { lesson: { ...PLAN.lesson, revision: PLAN.lesson.revision + 1 } }],
  ['a squad’s tablet', { squads: withFirst(PLAN.squads, { tablet: 'Tablet 77' }) }],
  ['a squad’s name', { squads: withFirst(PLAN.squads, { name: 'Herons' }) }],
  ['a squad less', { squads: PLAN.squads.slice(1) }],
  ['a station’s letter', { stations: withFirst(PLAN.stations, { code: 'Q' }) }],
])('clips are read anew for %s', (_, change) => {
  expect(isReadAlike(PLAN, { ...PLAN, ...change })).toBe(false);
});
