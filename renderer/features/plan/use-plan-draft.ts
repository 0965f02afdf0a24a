import { useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { openPlanDraft, type PlanDraft, type PlanDraftState } from './plan-draft.ts';

/** The draft of the open lesson's plan: shown as edited, saved as it is edited. */
export function usePlanDraft(
  lesson: LessonView,
  desk: LessonDesk,
): { readonly draft: PlanDraft; readonly state: PlanDraftState } {
  const draft = useMemo(
    () =>
      openPlanDraft({
        getSaved: () => {
          const { plan, planVersion } = desk.getState().view;
          return { plan, version: planVersion };
        },
        save: async (base, plan) => {
          const reply = await desk.ask('savePlan', { base, plan });
          return reply.ok ? [] : reply.problems;
        },
      }),
    [desk],
  );
  const state = useSyncExternalStore(draft.subscribe, draft.getState);
  const seen = useRef(lesson.planVersion);
  useEffect(() => {
    if (seen.current === lesson.planVersion) return;
    seen.current = lesson.planVersion;
    draft.refresh();
  }, [draft, lesson.planVersion]);
  return { draft, state };
}
