import type { EpochMs, Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';

/** A class period as two instants. */
export interface PeriodWindow {
  readonly code: string;
  readonly startMs: EpochMs;
  readonly endMs: EpochMs;
}

/**
 * The period a clip's start falls into: inside one, or else within `graceSeconds` of the nearest. Null: none.
 * A clip between two bells goes to the nearer period, on a tie to the earlier one.
 */
export function findPeriod(
  startMs: EpochMs,
  windows: readonly PeriodWindow[],
  graceSeconds: Seconds,
): string | null {
  const byDistance = windows
    .map((window) => ({ window, distanceMs: Math.max(0, window.startMs - startMs, startMs - window.endMs) }))
    .sort((a, b) => a.distanceMs - b.distanceMs || a.window.startMs - b.window.startMs);
  const nearest = byDistance[0];
  return nearest && nearest.distanceMs <= graceSeconds * MS_PER_SECOND ? nearest.window.code : null;
}

/**
 * A pause longer than this between two clips of one tablet is a change of class. Longer than any walk between
 * two stations, shorter than the shortest period with its breaks. Common practice, not measured.
 */
const CLASS_BREAK_SECONDS: Seconds = 20 * 60;

/**
 * Splits one tablet's starts (ascending) where it lay unused, for tablets whose clock fits no period at all.
 * Each run is a range of indexes, end excluded; together they cover everything.
 */
export function splitByBreaks(
  startsMs: readonly EpochMs[],
): readonly { readonly from: number; readonly to: number }[] {
  const runs: { from: number; to: number }[] = [];
  startsMs.forEach((startMs, index) => {
    const previous = startsMs[index - 1];
    const last = runs.at(-1);
    const isBreak = previous === undefined || startMs - previous > CLASS_BREAK_SECONDS * MS_PER_SECOND;
    if (isBreak || !last) runs.push({ from: index, to: index + 1 });
    else last.to = index + 1;
  });
  return runs;
}
