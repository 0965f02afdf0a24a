import { REVIEW } from '../../text/english/review.ts';
import type { Earnings } from './score-sheet.ts';

/** What the clip earns as it stands, and why not more; in pencil until all is inked. */
export function EarnsLine({ earnings }: { readonly earnings: Earnings }) {
  const { points, max, open, isInked } = earnings;
  return (
    <p className={`pt ${isInked ? 'ink' : ''}`} role="status">
      <b>{open.length > 0 ? REVIEW.earnsOpen(max) : REVIEW.earns(points, max)}</b>
      <span className="cap">{describeWhy(earnings)}</span>
    </p>
  );
}

function describeWhy({ open, unmet, isInked, isLost }: Earnings): string {
  if (isLost) return REVIEW.lost;
  if (open.length > 0) return REVIEW.openWords(open);
  const state = isInked ? REVIEW.inked : REVIEW.pencilled;
  return unmet.length === 0 ? state : `${state}, ${REVIEW.because(unmet)}`;
}
