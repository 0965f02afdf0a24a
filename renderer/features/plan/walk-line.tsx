import { useMemo } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { type OftenWalked, walkOften } from '../../../src-core/lesson/walk/walk-often.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';

/** The most queues that are told one by one. */
const MOST_TOLD = 3;

/** A wait shorter than this is no queue that a teacher would see, in seconds. */
const SHORTEST_WAIT = 20;

/** How a simulated class would walk the plan, drawn many times: where queues form, and whether the time is enough. In pencil. */
export function WalkLine({ plan, names }: { readonly plan: Plan; readonly names: LessonNames }) {
  const walked = useMemo(() => walkOften(plan, SHORTEST_WAIT), [plan]);
  const queues = walked.worst.queues.filter(({ waitSeconds }) => waitSeconds >= SHORTEST_WAIT);
  return (
    <div className="walk pen" title={ROUTES.walkHint}>
      <p>
        {describeWalk(walked)}.<span className="vh"> {ROUTES.walkHint}</span>
      </p>
      {queues.length > 0 && <p>{ROUTES.walkedWorst}</p>}
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

function describeWalk({ walks, waiting, late, latestEndSeconds, worst }: OftenWalked): string {
  const over = latestEndSeconds - (worst.workSeconds ?? latestEndSeconds);
  return [
    waiting === 0 ? ROUTES.walkedFreely(walks) : ROUTES.walkedQueues(waiting, walks),
    late === 0
      ? ROUTES.walkedEnd(ROUTES.span(latestEndSeconds))
      : ROUTES.walkedOver(late, walks, ROUTES.span(over)),
  ].join('; ');
}
