import type { Plan } from '../../../src-core/lesson/plan.ts';
import { namePeriod } from './period.ts';
import { FIELD_WORDS } from './plan-fields.ts';

/** Parts of the plan that stand for themselves. */
const PARTS: Readonly<Record<string, string>> = {
  lesson: 'The lesson',
  zone: 'Time zone',
  stations: 'Stations',
  squads: 'Squads',
  periods: 'Periods',
  briefing: 'Briefing',
  timing: 'Time',
  grouping: 'How squads are formed',
  rotation: 'Rotation',
  standards: 'Standards',
  rubric: 'Rubric',
  scale: 'Scale',
  tolerances: 'Rules',
  orderRule: 'Order rule',
  gradeSheet: 'Columns of the grade sheet',
};

/** Lists whose entries a teacher knows by a name of their own. */
const ENTRIES: readonly {
  readonly pattern: RegExp;
  readonly name: (plan: Plan, at: number) => string | undefined;
}[] = [
  { pattern: /^stations\[(\d+)\]/, name: ({ stations }, at) => say('Station', stations[at]?.code) },
  { pattern: /^squads\[(\d+)\]/, name: ({ squads }, at) => squads[at]?.name },
  { pattern: /^periods\[(\d+)\]/, name: ({ periods }, at) => sayPeriod(periods[at]?.code) },
  { pattern: /^rubric\.clip\[(\d+)\]/, name: ({ rubric }, at) => say('Criterion', rubric.clip[at]?.label) },
  { pattern: /^rubric\.squad\[(\d+)\]/, name: ({ rubric }, at) => say('Criterion', rubric.squad[at]?.label) },
  { pattern: /^scale\[(\d+)\]/, name: ({ scale }, at) => say('Mark', scale[at]?.mark) },
];

/** Where in plan.json something stands, as whoever edits the file looks for it. */
export function namePlanPath(path: string): string {
  return `plan.json, ${path === '' ? 'as a whole' : path}`;
}

/** Where on the sheet something of the plan stands, such as `Station C, reps` or `Teal, slot 3`. */
export function describePlanPlace(plan: Plan, path: string): string {
  for (const { pattern, name } of ENTRIES) {
    const found = pattern.exec(path);
    const entry = found?.[1] === undefined ? undefined : name(plan, Number(found[1]));
    if (found && entry !== undefined) return join(entry, describeRest(path.slice(found[0].length)));
  }
  const [part = '', ...rest] = path.split(/(?=[.[])/);
  return join(PARTS[part] ?? 'The plan', describeRest(rest.join('')));
}

function describeRest(rest: string): string {
  const slot = /^\.route\[(\d+)\]/.exec(rest)?.[1];
  if (slot !== undefined) return `slot ${Number(slot) + 1}`;
  const names = rest.match(/[A-Za-z]+/g) ?? [];
  return names.map((name) => FIELD_WORDS[name] ?? name).join(', ');
}

function join(entry: string, rest: string): string {
  return rest === '' ? entry : `${entry}, ${rest}`;
}

function sayPeriod(code: string | undefined): string | undefined {
  if (code === undefined) return undefined;
  const name = namePeriod(code);
  return name === code ? say('Period', code) : name.charAt(0).toUpperCase() + name.slice(1);
}

function say(kind: string, name: string | undefined): string | undefined {
  return name === undefined ? undefined : `${kind} ${name}`;
}
