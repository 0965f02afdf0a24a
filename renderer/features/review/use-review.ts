import { useCallback, useMemo, useRef } from 'react';
import type { StepProps } from '../../client/steps.ts';
import { useDraft } from '../../storage/use-draft.ts';
import {
  findBefore,
  findFirstLeft,
  findNextFlagged,
  findNextLeft,
  listQueue,
  type QueueItem,
  type QueueOrder,
} from './review-queue.ts';

/** The queue, the clip on the desk, and the ways from one to another. */
export interface ReviewWay {
  readonly queue: readonly QueueItem[];
  readonly order: QueueOrder;
  readonly setOrder: (order: QueueOrder) => void;
  readonly item: QueueItem | null;
  readonly next: QueueItem | null;
  readonly show: (clip: string) => void;
  /** To the next clip that is left; where none is, to the empty desk. */
  readonly goOn: () => void;
  readonly goBack: () => void;
  /** To the next clip with an open flag; false where there is none in Review. */
  readonly goToFlag: () => boolean;
}

/** Where in the queue the teacher is. A clip in the address is shown; otherwise the first that is left. */
export function useReview({ lesson, target, go }: StepProps): ReviewWay {
  const draft = useDraft(`review-order:${lesson.lesson}`);
  const order = readOrder(draft.text);
  const { plan, clips, flags, squadScores } = lesson;
  const queue = useMemo(
    () => listQueue({ plan, clips, flags, squadScores }, order),
    [plan, clips, flags, squadScores, order],
  );
  const first = findFirstLeft(queue);
  // A clip stays on the desk when it is inked elsewhere, or its flag is settled and it moves in the queue.
  const shown = useRef<string | null>(null);
  const wanted = target ?? (target === null && shown.current && first ? shown.current : null);
  const item = target === DONE ? null : (queue.find(({ clip }) => clip.id === wanted) ?? first);
  shown.current = item?.clip.id ?? null;
  const current = item?.clip.id ?? null;
  const visited = useRef<string[]>([]);
  const show = useCallback(
    (clip: string) => {
      if (shown.current && shown.current !== clip) visited.current.push(shown.current);
      go('review', clip);
    },
    [go],
  );
  const next = findNextLeft(queue, current);
  return {
    queue,
    order,
    setOrder: draft.write,
    item,
    next,
    show,
    goOn: () => (next ? show(next.clip.id) : go('review', DONE)),
    goBack: () => {
      const before = visited.current.pop() ?? findBefore(queue, current)?.clip.id;
      if (before) go('review', before);
    },
    goToFlag: () => {
      const flagged = findNextFlagged(queue, current);
      if (flagged) show(flagged.clip.id);
      return flagged !== null;
    },
  };
}

/** The address of the empty desk behind the last clip. */
const DONE = 'done';

function readOrder(text: string | null): QueueOrder {
  return text === 'stations' || text === 'squads' ? text : 'flagged';
}
