import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { EpochMs } from '../../../src-core/platform/units.ts';
import { getZonedMs } from '../../client/zoned-ms.ts';

/** The one clock of the loom, and where each slot lies on it. */
export interface ClockAxis {
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
  /** Slot `n` lasts from `bounds[n]` to `bounds[n + 1]`. */
  readonly bounds: readonly EpochMs[];
  /** Whole five minutes within the axis. */
  readonly ticks: readonly EpochMs[];
}

const FIVE_MINUTES_MS = 5 * 60_000;

/** How much clock is shown above the first and below the last thing. */
const MARGIN_MS = 90_000;

/**
 * The clock that a lesson ran by. Slots lie where the squads' clips say: the median start per slot, with the
 * bounds halfway between; a slot that nobody filmed goes by its neighbours. Without two such slots the period is
 * divided evenly.
 */
export function buildClockAxis({ plan, clips }: Pick<LessonView, 'plan' | 'clips'>): ClockAxis {
  const slots = Math.max(...plan.squads.map(({ route }) => route.length));
  const centres = Array.from({ length: slots }, (_, slot) => findMedianStart(clips, slot));
  const bounds = findBounds(centres) ?? divide(getPeriod(plan), slots);
  const shown = clips.flatMap(({ time, aside, durationSeconds }) =>
    time?.startMs == null || !isShown(aside)
      ? []
      : [time.startMs, time.startMs + (durationSeconds ?? 0) * 1000],
  );
  const fromMs = Math.min(bounds[0] ?? 0, ...shown) - MARGIN_MS;
  const toMs = Math.max(bounds.at(-1) ?? 0, ...shown) + MARGIN_MS;
  const first = Math.ceil(fromMs / FIVE_MINUTES_MS);
  const last = Math.floor(toMs / FIVE_MINUTES_MS);
  const ticks = Array.from({ length: last - first + 1 }, (_, at) => (first + at) * FIVE_MINUTES_MS);
  return { fromMs, toMs, bounds, ticks };
}

/** Whether a clip stands on the loom: in its route, or aside though filmed in the lesson. */
export function isShown(aside: LessonView['clips'][number]['aside']): boolean {
  return aside === null || aside === 'clock-film' || aside === 'by-teacher' || aside === 'other-squad';
}

/** Where an instant lies on the axis, in per cent from its top. */
export function getPercent({ fromMs, toMs }: ClockAxis, ms: EpochMs): number {
  return ((ms - fromMs) / (toMs - fromMs)) * 100;
}

function findMedianStart(clips: LessonView['clips'], slot: number): EpochMs | null {
  const starts = clips
    .flatMap(({ assignment, time, durationSeconds }) => {
      const isSure = assignment?.role === 'counts' && assignment.slot === slot && assignment.inOrder;
      return isSure && time?.startMs != null ? [time.startMs + (durationSeconds ?? 0) * 500] : [];
    })
    .toSorted((one, other) => one - other);
  return starts[Math.floor((starts.length - 1) / 2)] ?? null;
}

function findBounds(centres: readonly (EpochMs | null)[]): readonly EpochMs[] | null {
  const known = centres.flatMap((ms, slot) => (ms === null ? [] : [{ slot, ms }]));
  const [first] = known;
  const last = known.at(-1);
  if (!first || !last || last.slot === first.slot || last.ms <= first.ms) return null;
  const paceMs = (last.ms - first.ms) / (last.slot - first.slot);
  const filled = centres.map((ms, slot) => ms ?? findBetween(known, slot, paceMs));
  const inner = filled.slice(1).map((ms, at) => (ms + (filled[at] ?? ms)) / 2);
  const bounds = [(filled[0] ?? 0) - paceMs / 2, ...inner, (filled.at(-1) ?? 0) + paceMs / 2];
  const isRising = bounds.every((ms, at) => at === 0 || ms > (bounds[at - 1] ?? 0));
  return isRising ? bounds : null;
}

function findBetween(
  known: readonly { readonly slot: number; readonly ms: EpochMs }[],
  slot: number,
  paceMs: number,
): EpochMs {
  const before = known.findLast((one) => one.slot < slot);
  const after = known.find((one) => one.slot > slot);
  if (before && after) {
    return before.ms + ((slot - before.slot) / (after.slot - before.slot)) * (after.ms - before.ms);
  }
  const near = before ?? after;
  return near ? near.ms + (slot - near.slot) * paceMs : 0;
}

interface Span {
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
}

function getPeriod(plan: LessonView['plan']): Span {
  const { date, period } = plan.lesson;
  const window = plan.periods.find(({ code }) => code === period) ?? plan.periods[0];
  const fromMs = getZonedMs(date, window?.start ?? '09:00', plan.zone);
  const toMs = getZonedMs(date, window?.end ?? '10:00', plan.zone);
  return { fromMs, toMs: toMs > fromMs ? toMs : fromMs + 3_600_000 };
}

function divide({ fromMs, toMs }: Span, slots: number): readonly EpochMs[] {
  return Array.from({ length: slots + 1 }, (_, at) => fromMs + ((toMs - fromMs) * at) / slots);
}
