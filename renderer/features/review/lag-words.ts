import { REVIEW } from '../../text/english/review.ts';

/** Above this there is no room beside one another for a whole figure each. */
const MOST_FIGURES = 4;

/** What stands under the lanes' numbers. */
export interface LagWords {
  /** A word for each lane; empty: none. */
  readonly lags: readonly string[];
  /** Said once over all of them; null: each says it by itself. */
  readonly unit: string | null;
}

/** How far each lane is off the beat; of many lanes only those that are. */
export function wordLags(seconds: readonly number[]): LagWords {
  if (seconds.length <= MOST_FIGURES) return { lags: seconds.map(REVIEW.lag), unit: null };
  const lags = seconds.map((one) => (REVIEW.isOn(one) ? '' : REVIEW.lagShort(one)));
  return { lags, unit: lags.some((lag) => lag !== '') ? REVIEW.secondsOff : REVIEW.allOn };
}
