import type { Plan } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import type { Proposal } from './proposal.ts';
import type { ScoreInput } from './score-input.ts';
import { roundPoints } from './share.ts';

/** How one clip stands with one criterion. What is computed and what is decided never share a field. */
export interface CriterionMark {
  readonly criterion: string;
  /** The machine's suggestion; null where it has none. */
  readonly proposed: Proposal | null;
  /** The teacher's word; null where there is none yet. */
  readonly decided: boolean | null;
  /** What is shown and counted: the decision, else the proposal; null counts as not met. */
  readonly shown: boolean | null;
  /** Whether a person stands behind what is shown. */
  readonly confirmed: boolean;
}

/** A clip's criteria and what they earn, before order and overrides. */
export interface ClipScore {
  readonly clip: ClipId;
  /** In the rubric's order. */
  readonly criteria: readonly CriterionMark[];
  /** Every criterion is the teacher's own answer. */
  readonly confirmed: boolean;
  readonly earned: number;
  readonly max: number;
}

/** What one clip can earn at most: the award's points, or the sum of its criteria's. */
export function getClipMax(plan: Plan): number {
  const { award, clip } = plan.rubric;
  if (award.rule === 'all-or-nothing') return award.points;
  return roundPoints(clip.reduce((sum, { points }) => sum + points, 0));
}

/** A clip by the rubric: proposals where the teacher has not spoken, the teacher's word where it is given. */
export function scoreClip(input: ScoreInput, clip: ClipId): ClipScore {
  const { plan, proposals, decisions } = input;
  const criteria = plan.rubric.clip.map(({ code }): CriterionMark => {
    const proposed = proposals.get(clip)?.find(({ criterion }) => criterion === code) ?? null;
    const decided = decisions.answers.get(clip)?.get(code) ?? null;
    return {
      criterion: code,
      proposed,
      decided,
      shown: decided ?? proposed?.met ?? null,
      confirmed: decided !== null,
    };
  });
  return {
    clip,
    criteria,
    confirmed: criteria.every((mark) => mark.confirmed),
    earned: earnPoints(plan, (code) =>
      criteria.some(({ criterion, shown }) => criterion === code && shown === true),
    ),
    max: getClipMax(plan),
  };
}

/** What a clip earns by the rubric's award, whatever its order. */
export function earnPoints({ rubric: { award, clip } }: Plan, isMet: (criterion: string) => boolean): number {
  const met = clip.filter(({ code }) => isMet(code));
  if (award.rule === 'all-or-nothing') return met.length === clip.length ? award.points : 0;
  return roundPoints(met.reduce((sum, { points }) => sum + points, 0));
}
