import type { Seconds } from '../platform/units.ts';
import { measureAgreement, rescaleAgreement } from '../signal/order-parameter.ts';
import type { LanePhase } from './lane-phases.ts';
import type { UnisonWindow } from './unison-finding.ts';

/** Agreement of the lanes at one moment. */
export interface Moment {
  readonly atSeconds: Seconds;
  /** (R − R₀)/(1 − R₀) for the lanes then moving; below 0 where they agree less than chance. */
  readonly excess: number;
}

/** Share of a lane's usual amplitude below which it stands and has no phase. Set as those of `alternation.ts` were. */
const MOVING_SHARE = 0.35;
/** Windows hold three cycles where that is between these lengths. */
const WINDOW_SECONDS = [5, 10] as const;
const WINDOW_CYCLES = 3;

/**
 * The order parameter against chance, cycle by cycle. Lanes that stand still are left out; cycles with fewer than two
 * moving lanes are left out too. Each cycle gives its middle in seconds.
 */
export function traceAgreement(phases: readonly LanePhase[], middlesSeconds: readonly Seconds[]): Moment[] {
  const least = phases.map(({ amplitudes }) => MOVING_SHARE * findUsual(amplitudes));
  return middlesSeconds.flatMap((atSeconds, cycle): Moment[] => {
    const moving = phases.filter(({ amplitudes }, lane) => (amplitudes[cycle] ?? 0) >= (least[lane] ?? 0));
    if (moving.length < 2) return [];
    const { length } = measureAgreement(moving.map(({ cyclePhases }) => cyclePhases[cycle] ?? 0));
    return [{ atSeconds, excess: rescaleAgreement(length, moving.length) }];
  });
}

function findUsual(amplitudes: readonly number[]): number {
  const sorted = [...amplitudes].sort((one, other) => one - other);
  return sorted[Math.floor(0.7 * (sorted.length - 1))] ?? 0;
}

/** The mean over some moments as a score; below chance is 0, and no moments are 0. */
export function averageScore(moments: readonly Moment[]): number {
  const sum = moments.reduce((total, { excess }) => total + excess, 0);
  return moments.length === 0 ? 0 : Math.max(0, sum / moments.length);
}

/**
 * Scores in windows of three cycles, 5 s at least and 10 s at most, evenly spaced from the first moment to the last and
 * overlapping by half or more: groups that lose sight of each other keep unison for about 7 s (B. G. Bardy et al.,
 * "Moving in unison after perceptual interruption", Scientific Reports 10, 2020). A shorter span is one window.
 */
export function listWindows(moments: readonly Moment[], cycleSeconds: Seconds): UnisonWindow[] {
  const first = moments[0]?.atSeconds;
  const last = moments.at(-1)?.atSeconds;
  if (first === undefined || last === undefined) return [];
  const [least, most] = WINDOW_SECONDS;
  const length = Math.min(last - first, Math.max(least, Math.min(most, WINDOW_CYCLES * cycleSeconds)));
  const rest = last - first - length;
  const steps = length > 0 ? Math.ceil((2 * rest) / length - 1e-6) : 0;
  return Array.from({ length: steps + 1 }, (_, index): UnisonWindow => {
    const fromSeconds = steps === 0 ? first : first + (index * rest) / steps;
    const toSeconds = index === steps ? last : fromSeconds + length;
    const inside = moments.filter(({ atSeconds }) => atSeconds >= fromSeconds && atSeconds <= toSeconds);
    return { fromSeconds, toSeconds, score: averageScore(inside) };
  });
}
