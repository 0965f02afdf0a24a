import type { Plan } from './plan.ts';

/** The lists of a plan whose entries have codes, and where they stand. */
const LISTS = {
  stations: (plan: Plan) => plan.stations,
  squads: (plan: Plan) => plan.squads,
  periods: (plan: Plan) => plan.periods,
  standards: (plan: Plan) => plan.standards,
  criteria: (plan: Plan) => plan.rubric.clip,
  squadCriteria: (plan: Plan) => plan.rubric.squad,
} as const;

/** The parts of a plan that are one thing each. */
const SINGLES = {
  lesson: (plan: Plan) => plan.lesson,
  school: ({ zone }: Plan) => ({ zone }),
  briefing: (plan: Plan) => plan.briefing,
  timing: (plan: Plan) => plan.timing,
  grouping: (plan: Plan) => plan.grouping,
  rotation: (plan: Plan) => plan.rotation,
  tolerances: (plan: Plan) => plan.tolerances,
  marking: ({ orderRule, retake, rubric, scale }: Plan) => ({
    orderRule,
    retake,
    award: rubric.award,
    scale,
  }),
  gradeSheet: (plan: Plan) => plan.gradeSheet,
} as const;

/** A part of a plan, as far as it is compared. */
export type PlanPart = keyof typeof LISTS | keyof typeof SINGLES;

/** One thing that is different between two plans. */
export interface PlanChange {
  readonly part: PlanPart;
  /** Of the entry in a list; null for a part that is one thing. */
  readonly code: string | null;
  /** `moved`: the entries of this list are the same in another order. */
  readonly kind: 'added' | 'removed' | 'changed' | 'moved';
  /** The field that differs, such as `reps`; null where a whole entry came, went or moved. */
  readonly field: string | null;
  /** What stood there; null: nothing. Lists and groups as they stand in plan.json. */
  readonly was: unknown;
  readonly now: unknown;
}

/** What changed from one plan to another, entries known by their codes; empty for plans that say the same. */
export function comparePlans(was: Plan, now: Plan): readonly PlanChange[] {
  return [
    ...keysOf(SINGLES).flatMap((part) =>
      compareFields({ part, code: null }, SINGLES[part](was), SINGLES[part](now)),
    ),
    ...keysOf(LISTS).flatMap((part) => compareLists(part, LISTS[part](was), LISTS[part](now))),
  ];
}

function keysOf<Key extends string>(table: Readonly<Record<Key, unknown>>): readonly Key[] {
  return Object.keys(table) as Key[];
}

interface Coded {
  readonly code: string;
}

function compareLists(part: PlanPart, was: readonly Coded[], now: readonly Coded[]): PlanChange[] {
  const find = (list: readonly Coded[], code: string) => list.find((item) => item.code === code);
  const removed = was.flatMap((item): PlanChange[] =>
    find(now, item.code)
      ? []
      : [{ part, code: item.code, kind: 'removed', field: null, was: item, now: null }],
  );
  const kept = now.flatMap((item): PlanChange[] => {
    const before = find(was, item.code);
    return before
      ? compareFields({ part, code: item.code }, before, item)
      : [{ part, code: item.code, kind: 'added', field: null, was: null, now: item }];
  });
  const [orderWas, orderNow] = [
    was.filter(({ code }) => find(now, code)).map(({ code }) => code),
    now.filter(({ code }) => find(was, code)).map(({ code }) => code),
  ];
  const moved: PlanChange[] = isSame(orderWas, orderNow)
    ? []
    : [{ part, code: null, kind: 'moved', field: null, was: orderWas, now: orderNow }];
  return [...removed, ...kept, ...moved];
}

function compareFields(about: Pick<PlanChange, 'part' | 'code'>, was: object, now: object): PlanChange[] {
  const [before, after] = [new Map(Object.entries(was)), new Map(Object.entries(now))];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((field): PlanChange[] => {
    const [old, value] = [before.get(field) ?? null, after.get(field) ?? null];
    return isSame(old, value) ? [] : [{ ...about, kind: 'changed', field, was: old, now: value }];
  });
}

/** Both come from the schema, which fixes the order of keys. */
function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
