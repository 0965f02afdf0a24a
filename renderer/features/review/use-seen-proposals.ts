import { type RefObject, useEffect, useRef } from 'react';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Proposal } from '../../../src-core/marking/proposal.ts';

/** Nobody reads an answer and presses a key for it sooner than this. */
const TO_SEE_MS = 300;

/**
 * The proposals of the clip on the desk that the teacher has had time to see: one that comes under the hand, in the
 * moment before a key, is not what the key confirms.
 */
export function useSeenProposals({ id, proposals }: ClipView): RefObject<readonly Proposal[]> {
  const seen = useRef(proposals);
  const clip = useRef(id);
  // A clip that comes onto the desk shows what it shows.
  if (clip.current !== id) {
    clip.current = id;
    seen.current = proposals;
  }
  useEffect(() => {
    const timer = setTimeout(() => {
      seen.current = proposals;
    }, TO_SEE_MS);
    return () => clearTimeout(timer);
  }, [proposals]);
  return seen;
}
