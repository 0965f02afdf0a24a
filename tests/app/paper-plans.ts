import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Plan, planSchema } from '../../src-core/lesson/plan.ts';
import { type Pupil, parseRoster } from '../../src-core/lesson/roster.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour/', import.meta.url));

/** The harbour lesson's plan and pupils, with a change of the raw plan. */
export function readHarbour(change: (raw: Plan) => void = () => {}): {
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
} {
  const raw = JSON.parse(readFileSync(`${HARBOUR}plan.json`, 'utf8'));
  change(raw);
  const plan = planSchema.parse(raw);
  return { plan, pupils: parseRoster(readFileSync(`${HARBOUR}roster.csv`, 'utf8'), plan).pupils };
}

/** Invented words of about this length, never longer. */
export function sayAtLength(length: number): string {
  const words = [
    'keep',
    'both',
    'hands',
    'on',
    'the',
    'rail',
    'and',
    'let',
    'the',
    'water',
    'settle',
    'before',
  ];
  let text = 'Always';
  for (let at = 0; ; at++) {
    const next = `${text} ${words[at % words.length]}`;
    if (next.length > length) return text;
    text = next;
  }
}

/** A plan whose every field of words is about as long as a plan takes, names of places, exercises and squads aside. */
export function fillPlan(raw: Plan): void {
  const long = sayAtLength(200);
  const list = Array.from({ length: 12 }, () => long);
  for (const station of raw.stations) {
    Object.assign(station, {
      clue: long,
      transit: long,
      caution: long,
      countsAs: long,
      easier: long,
      harder: long,
      equipment: long,
      demonstration: `https://harbour.example/${'quay-'.repeat(35)}`.slice(0, 200),
    });
  }
  raw.briefing = {
    objective: long,
    words: list.map((meaning) => ({ word: sayAtLength(40), meaning })),
    rules: list,
    boundaries: list,
    cautions: list,
  };
}

/** A circuit of forty stations, the most that a plan takes; `at` sets how long the demonstrations' addresses are. */
export function buildLongCircuit(at: number): Plan {
  const codes = Array.from(
    { length: 40 },
    (_, index) => `${'ABCD'[index % 4]}${String(index).padStart(2, '0')}`,
  );
  return readHarbour((raw) => {
    const [station] = raw.stations;
    if (!station) throw new Error('the harbour has stations');
    raw.lesson.code = ['QUAY', 'LONG-HARBOUR', 'PIER-9', 'MOLE', 'SLIP'][at % 5] ?? 'QUAY';
    raw.lesson.revision = 1 + at * 199;
    raw.stations = codes.map((code, index) => ({
      ...station,
      code,
      ...(at % 2 === 1 && { demonstration: `https://harbour.example/${'k'.repeat((index * 4) % 160)}` }),
    }));
    raw.squads = raw.squads.map((squad, turn) => {
      const route = codes.map((_, slot) => codes[(slot + turn) % codes.length] ?? '');
      return { ...squad, route, startsAt: route[0] ?? '' };
    });
  }).plan;
}
