import { useEffect, useState } from 'react';
import type { CallInput, CallOutput } from '../../../src-core/contract/calls.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';

/** What is handed in, as it is asked for. */
export type HandInWhat = CallInput<'draftHandIn'>['what'];

/** What would be written now. */
export type HandInDraft = CallOutput<'draftHandIn'>;

/** The latest draft, and why there is none. */
export interface DraftState {
  readonly draft: HandInDraft | null;
  readonly problems: readonly Problem[];
  /** A newer one is on its way. */
  readonly isAsking: boolean;
}

/**
 * The hand-in as the lesson stands in `revision`. It is always drafted with its open flags written into it: whether it
 * may be written so is the teacher's to say.
 */
export function useHandInDraft(desk: LessonDesk, what: HandInWhat, revision: number): DraftState {
  const [state, setState] = useState<DraftState>({ draft: null, problems: [], isAsking: true });
  const { client, lesson } = desk;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision is another sheet
  useEffect(() => {
    let isWanted = true;
    setState((now) => ({ ...now, isAsking: true }));
    void client.request('draftHandIn', { lesson, what, evenWithOpenFlags: true }).then((reply) => {
      if (!isWanted) return;
      const draft = reply.ok ? reply.value : null;
      setState({ draft, problems: reply.problems, isAsking: false });
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, what, revision]);
  return state;
}
