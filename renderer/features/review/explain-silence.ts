import type { ClipView, SeenView } from '../../../src-core/contract/lesson-view.ts';
import { countGivenLanes } from '../../../src-core/marking/given-lanes.ts';
import { REVIEW } from '../../text/english/review.ts';
import type { CriterionLine } from './score-sheet.ts';

/** Why a criterion of a clip has no proposal: what it is, or how far its pictures were looked at. */
export function explainSilence(
  checks: CriterionLine['checks'],
  { holds, seen }: Pick<ClipView, 'holds' | 'seen'>,
): string {
  if (checks === 'judgement' || checks === 'place') return REVIEW.noProposal[checks];
  if (holds === 'still') return REVIEW.noProposal.photo;
  if (seen.watched !== 'yes') return REVIEW.notWatched[seen.watched];
  return checks === 'together' ? explainNoUnison(seen) : REVIEW.noProposal[checks];
}

function explainNoUnison({ reps, lanes, isMeasuring }: SeenView): string {
  if (isMeasuring) return REVIEW.noProposal.measuring;
  if (!reps?.count) return REVIEW.noProposal.together;
  return lanes !== null && countGivenLanes(lanes) === 1 ? REVIEW.noProposal.alone : REVIEW.noProposal.lanes;
}
