import type { SlotIndex } from '../lesson/plan.ts';
import { type Alignment, align } from './align.ts';
import { tryHomes } from './home-takes.ts';
import { matchingCosts } from './matching-costs.ts';
import { findReadingInWalk, type Homes, listReadingsBeside, type Reading } from './reading.ts';
import { isOpen, type Walk } from './walk.ts';

/** One consistent story of how a squad's ordered clips came about. */
export interface Explanation {
  readonly homes: Homes;
  /** Sum over clips and empty slots; Infinity where the homes allow no story. */
  readonly cost: number;
  /** One reading per ordered clip. */
  readonly readings: readonly Reading[];
}

/** The cheapest story, and for every clip the cheapest story of each other place it could have. */
export interface ExplainedWalk {
  readonly best: Explanation;
  /** Per ordered clip, cheapest first: `cost` is that of the whole story. One entry per slot and way to be there. */
  readonly choices: readonly (readonly Reading[])[];
}

/**
 * Finds the cheapest explanation of the ordered clips: for each choice of which settled takes count, the clips are
 * aligned with the slots in time. Exact as long as the choices are few enough to try all (see `home-takes.ts`).
 */
export function explainWalk(walk: Walk): ExplainedWalk {
  const choices = walk.rows.map(() => new Map<string, Reading>());
  const best = tryHomes(walk, (homes) => {
    const alignment = alignWalk(walk, homes);
    walk.rows.forEach((_, row) => {
      for (const whole of priceReadings(walk, homes, alignment, row)) keepCheaper(choices[row], whole);
    });
    return { homes, cost: alignment.cost, readings: traceReadings(walk, homes, alignment) };
  });
  return {
    best,
    choices: choices.map((places) => [...places.values()].toSorted((one, other) => one.cost - other.cost)),
  };
}

function alignWalk(walk: Walk, homes: Homes): Alignment {
  return align({
    rows: walk.rows.length,
    columns: walk.route.length,
    match: (row, slot) => findMatch(walk, homes, row, slot)?.cost ?? Number.POSITIVE_INFINITY,
    skipRow: (row, passed) => getCheapest(listBeside(walk, homes, row, passed)).cost,
    skipColumn: (slot) => (isOpen(walk, slot) ? matchingCosts.missingSlot : 0),
  });
}

function traceReadings(walk: Walk, homes: Homes, alignment: Alignment): Reading[] {
  return alignment.rows.map(({ column, passed }, row) => {
    const match = column === null ? null : findMatch(walk, homes, row, column);
    return match ?? getCheapest(listBeside(walk, homes, row, passed));
  });
}

/** Every reading of one clip, priced as the cheapest whole story that holds it. */
function priceReadings(walk: Walk, homes: Homes, alignment: Alignment, row: number): Reading[] {
  const priced: Reading[] = [];
  for (let passed = 0; passed <= walk.route.length; passed += 1) {
    const match = findMatch(walk, homes, row, passed);
    const moves = listBeside(walk, homes, row, passed).map((reading) => ({ reading, matches: false }));
    if (match !== null) moves.push({ reading: match, matches: true });
    for (const { reading, matches } of moves) {
      const cost = alignment.priceThrough(row, passed, { cost: reading.cost, matches });
      if (Number.isFinite(cost)) priced.push({ ...reading, cost });
    }
  }
  return priced;
}

/** Counting and retaking at one slot are one place: which take counts is a rule, not a doubt. */
function keepCheaper(places: Map<string, Reading> | undefined, reading: Reading): void {
  const key = `${reading.role === 'wrong-place' ? 'wrong' : 'there'}:${reading.slot}`;
  if (reading.cost < (places?.get(key)?.cost ?? Number.POSITIVE_INFINITY)) places?.set(key, reading);
}

function findMatch(walk: Walk, homes: Homes, row: number, slot: SlotIndex): Reading | null {
  const clip = walk.rows[row];
  return clip === undefined || slot >= walk.route.length ? null : findReadingInWalk(walk, homes, clip, slot);
}

function listBeside(walk: Walk, homes: Homes, row: number, passed: number): Reading[] {
  const clip = walk.rows[row];
  return clip === undefined ? [] : listReadingsBeside(walk, homes, clip, passed);
}

/** The first of the cheapest readings. */
function getCheapest(readings: readonly Reading[]): Reading {
  const never: Reading = { role: 'extra', slot: null, cost: Number.POSITIVE_INFINITY };
  return readings.reduce((best, reading) => (reading.cost < best.cost ? reading : best), never);
}
