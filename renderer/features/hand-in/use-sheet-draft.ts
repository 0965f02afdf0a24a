import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';

/** The sheet as it would be written now. */
export type SheetDraft = CallOutput<'draftSheet'>;

/** The latest draft, and why there is none. */
export interface DraftState {
  readonly draft: SheetDraft | null;
  readonly problems: readonly Problem[];
  /** A newer one is on its way. */
  readonly isAsking: boolean;
}

/**
 * The sheet for these columns (null: the plan's) as the lesson stands in `revision`. It is always drafted with its open
 * flags written into it: whether it may be written so is the teacher's to say.
 */
export function useSheetDraft(
  desk: LessonDesk,
  columns: readonly SheetColumn[] | null,
  revision: number,
): DraftState {
  const [state, setState] = useState<DraftState>({ draft: null, problems: [], isAsking: true });
  const { client, lesson } = desk;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision is another sheet
  useEffect(() => {
    let isWanted = true;
    setState((now) => ({ ...now, isAsking: true }));
    const order = { lesson, columns: columns && [...columns], evenWithOpenFlags: true };
    void client.request('draftSheet', order).then((reply) => {
      if (!isWanted) return;
      const draft = reply.ok ? reply.value : null;
      setState({ draft, problems: reply.problems, isAsking: false });
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, columns, revision]);
  return state;
}
