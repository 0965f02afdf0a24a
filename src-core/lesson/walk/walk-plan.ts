import { type Random, seededRandom } from '../../platform/seeded-random.ts';
import type { Seconds } from '../../platform/units.ts';
import {
  findMetres,
  findRepsSeconds,
  findWorkSeconds,
  SET_UP_SECONDS,
  WALK_METRES_PER_SECOND,
} from '../lesson-timing.ts';
import { findStation, type Plan, type SlotIndex, type SquadCode, type StationCode } from '../plan.ts';

/** What a simulated walk takes for granted; every figure may be given otherwise. */
export interface WalkOptions {
  readonly seed: number;
  /** How much squads differ: 0.2 lets each be up to a fifth quicker or slower than usual, drawn evenly. */
  readonly paceSpread: number;
  readonly metresPerSecond: number;
  /** A leg without a given distance. */
  readonly legSeconds: Seconds;
  /** Card, line-up and tablet before the first rep. */
  readonly setUpSeconds: Seconds;
  /** A station's transit task and its clue, where it has them. */
  readonly transitSeconds: Seconds;
  readonly clueSeconds: Seconds;
  /** A rep of an exercise without a usual tempo. */
  readonly repSeconds: Seconds;
}

/** Estimates of ours, to be replaced by what a school has seen; only the tempo comes from the plan. */
const WALK_DEFAULTS: WalkOptions = {
  seed: 1,
  paceSpread: 0.2,
  metresPerSecond: WALK_METRES_PER_SECOND,
  legSeconds: 30,
  setUpSeconds: SET_UP_SECONDS,
  transitSeconds: 60,
  clueSeconds: 20,
  repSeconds: 3,
};

/** A squad at one of its stations; seconds from the start of work. */
export interface Visit {
  readonly squad: SquadCode;
  readonly slot: SlotIndex;
  readonly station: StationCode;
  readonly arriveSeconds: Seconds;
  /** Later than the arrival where another squad was still there. */
  readonly startSeconds: Seconds;
  readonly endSeconds: Seconds;
}

/** A squad that had to wait for a station. */
export interface Queue {
  readonly station: StationCode;
  /** Of the squad that waits. */
  readonly slot: SlotIndex;
  readonly squads: { readonly waiting: SquadCode; readonly working: SquadCode };
  readonly atSeconds: Seconds;
  readonly waitSeconds: Seconds;
}

/** One class simulated on its way round. */
export interface WalkedPlan {
  /** By squad, then by slot. */
  readonly visits: readonly Visit[];
  /** Longest wait first. */
  readonly queues: readonly Queue[];
  /** When the last squad is done. */
  readonly endSeconds: Seconds;
  /** Time for work by the plan; null where it has no period. */
  readonly workSeconds: Seconds | null;
  readonly options: WalkOptions;
}

interface Walker {
  readonly squad: SquadCode;
  readonly route: readonly StationCode[];
  /** Above 1: slower than usual. */
  readonly pace: number;
  slot: number;
  arriveSeconds: Seconds;
}

/**
 * Walks a simulated class along a plan's routes: each squad at its own pace, one squad at a station at a time, first
 * come first served, on to the next as soon as it is done. Says where queues form. A tool for planning: it tells
 * nothing about any real squad, and no squad is to be hurried by it.
 */
export function walkPlan(plan: Plan, given: Partial<WalkOptions> = {}): WalkedPlan {
  const options = { ...WALK_DEFAULTS, ...given };
  const random = seededRandom(options.seed);
  const walkers = plan.squads.map(
    ({ code, route }): Walker => ({
      squad: code,
      route,
      pace: 1 + options.paceSpread * (2 * random() - 1),
      slot: 0,
      arriveSeconds: 0,
    }),
  );
  const lastAt = new Map<StationCode, Visit>();
  const visits: Visit[] = [];
  const queues: Queue[] = [];
  for (let walker = chooseNext(walkers); walker; walker = chooseNext(walkers)) {
    const visit = visitStation(walker, { plan, options, random, before: lastAt.get(getStop(walker)) });
    const before = lastAt.get(visit.station);
    if (before && visit.startSeconds > visit.arriveSeconds) {
      queues.push({
        station: visit.station,
        slot: visit.slot,
        squads: { waiting: visit.squad, working: before.squad },
        atSeconds: visit.arriveSeconds,
        waitSeconds: visit.startSeconds - visit.arriveSeconds,
      });
    }
    lastAt.set(visit.station, visit);
    visits.push(visit);
    walker.slot += 1;
    const next = walker.route[walker.slot];
    walker.arriveSeconds =
      visit.endSeconds +
      (next === undefined ? 0 : walker.pace * getLegSeconds(plan, [visit.station, next], options));
  }
  const order = new Map(plan.squads.map(({ code }, at) => [code, at]));
  return {
    visits: visits.sort(
      (one, other) => (order.get(one.squad) ?? 0) - (order.get(other.squad) ?? 0) || one.slot - other.slot,
    ),
    queues: queues.sort((one, other) => other.waitSeconds - one.waitSeconds),
    endSeconds: Math.max(0, ...visits.map(({ endSeconds }) => endSeconds)),
    workSeconds: findWorkSeconds(plan),
    options,
  };
}

/** Who arrives next; of two at once the one that stands first in the plan. Null: everybody is done. */
function chooseNext(walkers: readonly Walker[]): Walker | null {
  return walkers
    .filter(({ slot, route }) => slot < route.length)
    .reduce<Walker | null>(
      (first, walker) => (first === null || walker.arriveSeconds < first.arriveSeconds ? walker : first),
      null,
    );
}

function getStop({ route, slot }: Walker): StationCode {
  return route[slot] ?? '';
}

interface VisitContext {
  readonly plan: Plan;
  readonly options: WalkOptions;
  readonly random: Random;
  /** The visit of this station that began last; undefined: nobody has been here. */
  readonly before: Visit | undefined;
}

function visitStation(walker: Walker, { plan, options, random, before }: VisitContext): Visit {
  const { squad, slot, arriveSeconds, pace } = walker;
  const code = getStop(walker);
  const startSeconds = Math.max(arriveSeconds, before?.endSeconds ?? 0);
  const station = findStation(plan, code);
  const [quick, slow] = (station && findRepsSeconds(station)) ?? [0, 0];
  const reps = slow > 0 ? quick + random() * (slow - quick) : (station?.reps ?? 0) * options.repSeconds;
  const endSeconds = startSeconds + pace * (options.setUpSeconds + reps);
  return { squad, slot, station: code, arriveSeconds, startSeconds, endSeconds };
}

/** From one station to the next: its transit task and its clue, and the way. */
function getLegSeconds(plan: Plan, [from, to]: readonly [string, string], options: WalkOptions): Seconds {
  const next = findStation(plan, to);
  const metres = findMetres(plan, from, to);
  const way = metres === null ? options.legSeconds : metres / options.metresPerSecond;
  return way + (next?.transit ? options.transitSeconds : 0) + (next?.clue ? options.clueSeconds : 0);
}
