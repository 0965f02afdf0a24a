import { useMemo } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { type WalkedPlan, walkPlan } from '../../../src-core/lesson/walk/walk-plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';

/** The most queues that are told one by one. */
const MOST_TOLD = 3;

/** A wait shorter than this is no queue that a teacher would see, in seconds. */
const SHORTEST_WAIT = 20;

/** How a simulated class would walk the plan: where queues form, and whether the time is enough. In pencil. */
export function WalkLine({ plan, names }: { readonly plan: Plan; readonly names: LessonNames }) {
  const walked = useMemo(() => walkPlan(plan), [plan]);
  const queues = walked.queues.filter(({ waitSeconds }) => waitSeconds >= SHORTEST_WAIT);
  return (
    <div className="walk pen" title={ROUTES.walkHint}>
      <p>
        {ROUTES.walk}: {describeWalk(walked, queues.length)}.<span className="vh"> {ROUTES.walkHint}</span>
      </p>
      {queues.length > 0 && (
        <ul>
          {queues.slice(0, MOST_TOLD).map(({ station, slot, squads, waitSeconds }) => (
            <li key={`${squads.waiting} ${slot}`}>
              {ROUTES.queue(names.squad(squads.waiting), names.squad(squads.working), {
                station,
                slot: slot + 1,
                seconds: waitSeconds,
              })}
            </li>
          ))}
          {queues.length > MOST_TOLD && <li>{ROUTES.moreQueues(queues.length - MOST_TOLD)}</li>}
        </ul>
      )}
    </div>
  );
}

function describeWalk({ endSeconds, workSeconds }: WalkedPlan, queues: number): string {
  const end = ROUTES.span(endSeconds);
  const over = workSeconds === null ? 0 : endSeconds - workSeconds;
  if (over > 0) return ROUTES.walkedOver(end, ROUTES.span(over));
  return queues === 0 ? ROUTES.walkedFreely(end) : ROUTES.walkedQueues(queues, end);
}
