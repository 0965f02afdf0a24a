import { useCallback, useMemo, useRef } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Reply } from '../../../src-core/contract/reply.ts';
import type { Plan, SquadCode } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import type { SuggestedSquad } from '../../../src-core/lesson/squads/suggest-squads.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import type { StepProps } from '../../client/steps.ts';
import type { PlanDraft } from './plan-draft.ts';
import type { PlanEdit } from './plan-edit.ts';
import type { MovingPupil } from './pupil-name.tsx';
import { changeGrouping, takeSquads } from './squad-edits.ts';

/** Squads as suggested, or why there are none. */
export type SquadsReply = Reply<'suggestSquads'>;

/** What can be done with the class of a lesson while it is planned. */
export interface ClassDesk {
  readonly pupils: readonly Pupil[];
  readonly names: LessonNames;
  readonly desk: LessonDesk;
  readonly deskView: StepProps['deskView'];
  readonly onChange: (edit: PlanEdit) => void;
  /** Puts pupils into a squad; the first of them has the focus again once there. */
  readonly move: (ids: readonly string[], squad: SquadCode) => void;
  readonly moving: MovingPupil;
  readonly suggest: (plan: Plan, count: number) => Promise<SquadsReply>;
  /** Writes suggested squads into the plan and pupils into them. */
  readonly ink: (
    suggested: { readonly plan: Plan; readonly squads: readonly SuggestedSquad[] },
    seed: number,
  ) => Promise<void>;
}

/** The class of the open lesson; what cannot be written is reported above the screen. */
export function useClass(props: StepProps, draft: PlanDraft): ClassDesk {
  const { lesson, desk, deskView, names } = props;
  const suggest = useCallback(
    (plan: Plan, count: number) => desk.client.request('suggestSquads', { lesson: desk.lesson, plan, count }),
    [desk],
  );
  const moving = useRef<string | null>(null);
  return useMemo(() => {
    const save = async (assignment: readonly { readonly pupil: string; readonly squad: SquadCode }[]) => {
      const reply = await desk.ask('saveSquads', { assignment: [...assignment] });
      if (reply.ok) return;
      moving.current = null;
      desk.report(reply.problems as readonly Problem[]);
    };
    return {
      pupils: lesson.pupils,
      names,
      desk,
      deskView,
      suggest,
      onChange: (edit) => void draft.change(edit),
      moving,
      move: (ids, squad) => {
        const first = lesson.pupils.find(({ id }) => id === ids[0]);
        moving.current = first && first.squad !== squad ? first.id : null;
        void save(ids.map((pupil) => ({ pupil, squad })));
      },
      ink: async ({ plan, squads }, seed) => {
        const assignment = squads.flatMap(({ code, pupils }) =>
          pupils.map((pupil) => ({ pupil, squad: code })),
        );
        const known = new Set(draft.getState().plan.squads.map(({ code }) => code));
        const change = () =>
          draft.change((now) => ({ ...takeSquads(plan.squads)(now), ...changeGrouping({ seed })(now) }));
        // A pupil never stands in a squad that the plan has not: new squads come first, old ones go last.
        if (plan.squads.every(({ code }) => known.has(code))) {
          await save(assignment);
          await change();
        } else {
          await change();
          await save(assignment);
        }
      },
    };
  }, [lesson.pupils, names, desk, deskView, draft, suggest]);
}
