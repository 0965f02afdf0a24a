// The oracle: every story of a small walk is told and priced one by one, straight from the cost table's words.
// It shares the table with the code under test and nothing else.
import {
  matchingCosts as cost,
  FEWEST_PACE_SPANS,
  RETAKE_GAP_SHARES,
  TIME_SLACK_SECONDS,
} from '../../../src-core/matching/matching-costs.ts';
import type { PlacedClip } from '../../../src-core/matching/observation.ts';

export interface SmallWalk {
  readonly route: readonly string[];
  readonly clips: readonly PlacedClip[];
  readonly retake: 'first' | 'last';
}

export interface Stories {
  /** The least sum over all stories. */
  readonly cost: number;
  /** Per ordered clip: place → least sum of a story that has it there. */
  readonly places: readonly ReadonlyMap<string, number>[];
}

/** All subsets of positions; the largest whose values rise, and among those the one that leaves out the earliest. */
export function dropFewest(values: readonly number[]): number[] {
  let best: number[] | null = null;
  for (let subset = 0; subset < 2 ** values.length; subset += 1) {
    const dropped = [...values.keys()].filter((position) => (subset >> position) & 1);
    const kept = values.filter((_, position) => !((subset >> position) & 1));
    const rises = kept.every((value, position) => position === 0 || value > Number(kept[position - 1]));
    if (!rises) continue;
    if (
      best === null ||
      dropped.length < best.length ||
      (dropped.length === best.length && isEarlier(dropped, best))
    ) {
      best = dropped;
    }
  }
  return best ?? [];
}

function isEarlier(one: readonly number[], other: readonly number[]): boolean {
  const differs = one.findIndex((value, position) => value !== other[position]);
  return differs >= 0 && Number(one[differs]) < Number(other[differs]);
}

interface Seen {
  readonly clip: PlacedClip;
  readonly station: string | null;
  readonly own: number | null;
  readonly byHand: boolean;
}

export function tellEveryStory(walk: SmallWalk): Stories {
  const seen = walk.clips.map((clip) => look(walk, clip));
  const rows = seen.filter(({ clip }) => clip.hasOrder);
  const clock = readClock(walk, rows, seen);
  const places = rows.map(() => new Map<string, number>());
  let least = Number.POSITIVE_INFINITY;

  for (const homes of chooseHomes(walk, seen)) {
    const settled = (slot: number) => seen.some(({ own }) => own === slot);
    const tell = (
      row: number,
      told: { place: string; slot: number | null; inWalk: boolean; cost: number }[],
    ): void => {
      const one = rows[row];
      if (one === undefined) {
        const filled = new Set(told.filter(({ inWalk }) => inWalk).map(({ slot }) => slot));
        const empty = [...walk.route.keys()].filter((slot) => !settled(slot) && !filled.has(slot)).length;
        const sum = told.reduce((total, part) => total + part.cost, empty * cost.missingSlot);
        least = Math.min(least, sum);
        told.forEach(({ place }, position) => {
          const known = places[position]?.get(place) ?? Number.POSITIVE_INFINITY;
          if (sum < known) places[position]?.set(place, sum);
        });
        return;
      }
      const reached = told.findLast(({ inWalk }) => inWalk)?.slot ?? -1;
      const go = (part: { place: string; slot: number | null; inWalk: boolean; cost: number }) => {
        if (Number.isFinite(part.cost)) tell(row + 1, [...told, part]);
      };
      for (let slot = reached + 1; slot < walk.route.length; slot += 1) {
        const late = cost.offPace * clock.lateness(one.clip, slot);
        if (one.own !== null && homes[one.own] === one) {
          if (one.own === slot) go({ place: `there:${slot}`, slot, inWalk: true, cost: 0 });
        } else if (!one.byHand && !settled(slot)) {
          if (one.station === null) {
            const price = cost.inferred + late + looks(walk, one, slot);
            go({ place: `there:${slot}`, slot, inWalk: true, cost: price });
          } else go({ place: `wrong:${slot}`, slot, inWalk: true, cost: cost.wrongPlace + late });
        }
      }
      if (one.own !== null) {
        const home = homes[one.own];
        const price = home === one ? cost.outOfOrder : priceSecondTake(walk, rows, clock, [one, home ?? one]);
        go({ place: `there:${one.own}`, slot: one.own, inWalk: false, cost: price });
        return;
      }
      go({ place: 'there:null', slot: null, inWalk: false, cost: cost.extra });
      if (one.station !== null) return;
      const known = (other: Seen) => other.station !== null || other.byHand;
      const guesses: [Seen | undefined, number | null | undefined][] = [
        rows.slice(0, row).reverse(),
        rows.slice(row + 1),
      ]
        .map((side) => side.find(known))
        .map((near) => [near, near?.own]);
      if (reached >= 0 && !settled(reached)) guesses.push([rows[row - 1], reached]);
      for (const [near, slot] of guesses) {
        if (near === undefined || slot === null || slot === undefined) continue;
        const pair: [Seen, Seen] = rows.indexOf(near) < row ? [near, one] : [one, near];
        const price = cost.inferred + priceGap(clock, pair) + looks(walk, one, slot);
        go({ place: `there:${slot}`, slot, inWalk: false, cost: price });
      }
    };
    tell(0, []);
  }
  return { cost: least, places };
}

function look(walk: SmallWalk, clip: PlacedClip): Seen {
  const station = clip.observation.known ? clip.observation.station : null;
  const byHand = clip.slotByTeacher !== null && clip.slotByTeacher < walk.route.length;
  const bySign = station === null || !walk.route.includes(station) ? null : walk.route.indexOf(station);
  return { clip, station, byHand, own: byHand ? clip.slotByTeacher : bySign };
}

function* chooseHomes(walk: SmallWalk, seen: readonly Seen[]): Generator<(Seen | null)[]> {
  let choices: (Seen | null)[][] = [[]];
  for (const slot of walk.route.keys()) {
    const takes = seen.filter(({ own }) => own === slot);
    const byHand = takes.filter((take) => take.byHand);
    const pool = byHand.length > 0 ? byHand : takes;
    const timed = pool.filter(({ clip }) => clip.hasOrder);
    let able: (Seen | null | undefined)[] = timed;
    if (takes.length === 0) able = [null];
    else if (timed.length === 0) able = pool.slice(0, 1);
    else if (byHand.length > 0) able = [walk.retake === 'last' ? timed[timed.length - 1] : timed[0]];
    choices = choices.flatMap((choice) => able.map((take) => [...choice, take ?? null]));
  }
  yield* choices;
}

interface Clock {
  readonly gap: (earlier: PlacedClip, later: PlacedClip) => number | null;
  readonly lateness: (clip: PlacedClip, slot: number) => number;
}

function readClock(walk: SmallWalk, rows: readonly Seen[], seen: readonly Seen[]): Clock {
  const surest = Math.min(...rows.map(({ clip }) => clip.uncertaintySeconds));
  const time = (clip: PlacedClip) =>
    clip.hasOrder && clip.uncertaintySeconds - surest <= TIME_SLACK_SECONDS ? clip.startMs : null;
  const alone = rows.filter(
    ({ own, clip }) =>
      own !== null && time(clip) !== null && seen.filter((other) => other.own === own).length === 1,
  );
  const out = new Set(dropFewest(alone.map(({ own }) => Number(own))));
  const sure = alone.filter((_, position) => !out.has(position));
  const spans: number[] = [];
  for (let next = 1; next < sure.length; next += 1) {
    const [from, to] = [sure[next - 1], sure[next]];
    const span =
      (Number(to?.clip.startMs) - Number(from?.clip.startMs)) / (Number(to?.own) - Number(from?.own));
    if (span > 0) spans.push(span);
  }
  spans.sort((one, other) => one - other);
  const pace = spans.length < FEWEST_PACE_SPANS ? null : Number(spans[Math.ceil(spans.length / 2) - 1]);
  return {
    gap: (earlier, later) => {
      const [from, to] = [time(earlier), time(later)];
      return pace === null || from === null || to === null || to < from ? null : (to - from) / pace;
    },
    lateness: (clip, slot) => {
      const now = time(clip);
      if (pace === null || now === null || !walk.route[slot]) return 0;
      const below = sure.filter(({ own }) => Number(own) < slot).slice(-1);
      const above = sure.filter(({ own }) => Number(own) > slot).slice(0, 1);
      const off = [...below, ...above].map(
        ({ own, clip: near }) => Math.abs(now - (Number(near.startMs) + pace * (slot - Number(own)))) / pace,
      );
      return off.length === 0 ? 0 : Math.min(1, off.reduce((sum, part) => sum + part) / off.length);
    },
  };
}

function priceSecondTake(
  walk: SmallWalk,
  rows: readonly Seen[],
  clock: Clock,
  [one, home]: readonly [Seen, Seen],
): number {
  if (!home.clip.hasOrder) return cost.retakeUntimed;
  const [at, homeAt] = [rows.indexOf(one), rows.indexOf(home)];
  const between = rows.filter((_, row) => row > Math.min(at, homeAt) && row < Math.max(at, homeAt));
  const ruleSaysOne = !home.byHand && (walk.retake === 'first' ? at < homeAt : at > homeAt);
  if (between.some((other) => (other.station !== null || other.byHand) && other.own !== one.own)) {
    return cost.retakeReturned + (ruleSaysOne ? cost.againstRule : 0);
  }
  if (ruleSaysOne) return Number.POSITIVE_INFINITY;
  const towards = [...between.filter((other) => other.own === one.own), home];
  if (at < homeAt) return priceGap(clock, [one, towards[0] ?? home]);
  const previous = between.filter((other) => other.own === one.own).at(-1) ?? home;
  return priceGap(clock, [previous, one]);
}

function priceGap(clock: Clock, [earlier, later]: readonly [Seen, Seen]): number {
  const gap = clock.gap(earlier.clip, later.clip);
  if (gap === null) return cost.retakeUntimed;
  if (gap <= RETAKE_GAP_SHARES.soon) return cost.retakeSoon;
  if (gap >= RETAKE_GAP_SHARES.late) return cost.retakeLate;
  const share = (gap - RETAKE_GAP_SHARES.soon) / (RETAKE_GAP_SHARES.late - RETAKE_GAP_SHARES.soon);
  return cost.retakeSoon * (1 - share) + cost.retakeLate * share;
}

function looks(walk: SmallWalk, { clip }: Seen, slot: number): number {
  const score = clip.observation.known ? undefined : clip.observation.scores[String(walk.route[slot])];
  if (score === undefined) return 0;
  if (score <= 0) return cost.looksLimit;
  if (score >= 1) return -cost.looksLimit;
  const odds = Math.log(score) - Math.log(1 - score);
  return -Math.max(-cost.looksLimit, Math.min(cost.looksLimit, odds));
}
