import { type RefObject, useRef, useState } from 'react';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { ScoreActs } from './score-panel.tsx';
import { findConfirmation, findRestAnswered, isInked } from './score-sheet.ts';
import type { ReviewWay } from './use-review.ts';
import { useSeenProposals } from './use-seen-proposals.ts';

/** What the score sheet's keys and buttons do to the clip on the desk, and where to go on from it. */
export function useScoreActs(
  clip: ClipView,
  decide: LessonDesk['decide'],
  way: Pick<ReviewWay, 'goOn' | 'goBack'>,
): {
  readonly acts: ScoreActs;
  readonly firstOpen: RefObject<HTMLInputElement | null>;
  /** It was to be confirmed while an answer is open. */
  readonly isRefused: boolean;
} {
  const seen = useSeenProposals(clip);
  const firstOpen = useRef<HTMLInputElement>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const acts: ScoreActs = {
    decide,
    confirm: () => {
      if (isInked(clip)) return way.goOn();
      const confirmation = findConfirmation(clip, seen.current);
      if (!confirmation) {
        setRefused(clip.id);
        firstOpen.current?.focus();
        return;
      }
      void decide(confirmation);
      way.goOn();
    },
    answerRest: (met) => {
      const confirmation = isInked(clip) ? null : findRestAnswered(clip, met, seen.current);
      if (confirmation) void decide(confirmation);
      way.goOn();
    },
    back: way.goBack,
  };
  return { acts, firstOpen, isRefused: refused === clip.id };
}
