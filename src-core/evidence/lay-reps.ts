import type { Seconds } from '../platform/units.ts';
import type { CycleRun } from './cycle-runs.ts';
import type { CountingRule } from './reps-finding.ts';
import type { RepsRule } from './reps-rule.ts';

/** Reps laid into a run. */
export interface LaidReps {
  /** Cycles of the run that are done where the first rep begins; below 0 where it began before the clip. */
  readonly first: number;
  readonly count: number;
  /** Cycles from one rep to the next: half a cycle where each side counts. */
  readonly step: number;
  /** How plain it is that there was not one rep more, or less: 1 plain, 0 a toss-up. */
  readonly clearness: number;
}

/**
 * A rep counts when it is done (common practice): one that the clip's end cuts off does not, one that was under way as the
 * clip began does from its half on. Where a run starts from rest, or comes to it, a part of a cycle that is over is the way
 * into the first position, or out of the last: between rest and rest, whole cycles are laid, by sides too.
 */
export function layReps(
  run: CycleRun,
  cycleSeconds: Seconds,
  { counting, rule }: { readonly counting: CountingRule; readonly rule: RepsRule },
): LaidReps {
  const { cycles, startsAtRest, endsAtRest } = run;
  const perCycle = counting === 'side' ? 2 : 1;
  const step = 1 / perCycle;
  const approach = rule.approach[counting] * Math.min(1, cycleSeconds);
  if (startsAtRest && endsAtRest) {
    const count = Math.round(cycles - 2 * approach);
    const first = findSlowest(run, cycles - count);
    return { first, count: count * perCycle, step, clearness: judgeWhole(cycles - count) };
  }
  if (endsAtRest) {
    const count = Math.round((cycles - approach) * perCycle);
    return { first: cycles - count * step, count, step, clearness: judgeWhole(cycles * perCycle - count) };
  }
  const begin = startsAtRest || counting === 'side' ? 0 : findTurn(run, rule);
  const first = begin >= 0.5 ? begin - 1 : begin;
  const reps = (cycles - first + rule.lastShare + rule.lastSeconds / cycleSeconds) * perCycle;
  const count = Math.floor(reps);
  return { first, count, step, clearness: Math.min(1, 2 * (count + 1 - reps)) };
}

function judgeWhole(surplus: number): number {
  return Math.max(0, 1 - 2 * Math.abs(surplus));
}

/** Places that are tried for a turn, evenly spaced. */
const TRIES = 16;

/** Where, in what is over after whole cycles, the movement is slowest; in the middle where it is as slow all along. */
function findSlowest({ energyAt }: CycleRun, surplus: number): number {
  let best = surplus / 2;
  for (let at = 0; at <= TRIES; at++) {
    const place = (surplus * at) / TRIES;
    if (energyAt(place) < energyAt(best)) best = place;
  }
  return best;
}

/** How much a place and its neighbours have to say: one step's energy is noise. */
const NEARBY = [0.1, 0.2, 0.4, 0.2, 0.1];

/**
 * How much of a cycle is done until the first turn after the clip's begin: where the movement is slowest, the earlier the
 * likelier, for clips are begun before the first rep rather than amid it.
 */
function findTurn({ energyAt }: CycleRun, { lateTurnCost }: RepsRule): number {
  const energies = Array.from({ length: TRIES }, (_, at) => energyAt(at / TRIES));
  const mean = energies.reduce((sum, energy) => sum + energy, 0) / TRIES;
  const costs = energies.map((_, at) =>
    NEARBY.reduce(
      (sum, share, index) =>
        sum + (share * (energies[(at + index + TRIES - (NEARBY.length >> 1)) % TRIES] as number)) / mean,
      (lateTurnCost * at) / TRIES,
    ),
  );
  return costs.indexOf(Math.min(...costs)) / TRIES;
}

/** Where reps begin and end: one more than there are, ascending, none outside the clip. */
export function placeReps(
  run: CycleRun,
  { first, count, step }: LaidReps,
  durationSeconds: Seconds,
): Seconds[] {
  const marks: Seconds[] = [];
  for (let index = 0; index <= count; index++) {
    const at = Math.min(durationSeconds, Math.max(0, run.secondsAt(first + index * step)));
    marks.push(Math.max(at, marks.at(-1) ?? 0));
  }
  return marks;
}
