import { useMemo, useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { buildRouteOrder, withRoutes } from '../../../src-core/lesson/routes/plan-routes.ts';
import { type RouteSuggestion, suggestRoutes } from '../../../src-core/lesson/routes/suggest-routes.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RotationTable } from './rotation-table.tsx';
import { changeRotation } from './route-edits.ts';
import type { SlotTimes } from './slot-times.ts';

/** Routes as the machine would make them, in pencil until the teacher inks them; or why there are none. */
export function RouteProposal({
  plan,
  slots,
  names,
  onChange,
  onClose,
}: {
  readonly plan: Plan;
  readonly slots: SlotTimes;
  readonly names: LessonNames;
  readonly onChange: (edit: PlanEdit) => void;
  readonly onClose: () => void;
}) {
  const [seed, setSeed] = useState(plan.rotation.seed);
  const found = useMemo(() => suggestRoutes({ ...buildRouteOrder(plan), seed }), [plan, seed]);
  const ink = (suggestion: RouteSuggestion) => {
    onChange((now) => ({ squads: withRoutes(now, suggestion).squads }));
    if (seed !== plan.rotation.seed) onChange(changeRotation({ seed }));
    onClose();
  };
  return (
    <section className="proposal" aria-label={found.ok ? ROUTES.proposed : ROUTES.notPossible}>
      <p className="pen" role="status">
        <b>{found.ok ? ROUTES.proposed : ROUTES.notPossible}.</b> {found.ok && ROUTES.proposedHint}
      </p>
      {found.ok && <RotationTable plan={withRoutes(plan, found.value)} times={slots.starts} />}
      {found.ok && <p className="pen">{describeNature(found.value, plan.rotation.design)}</p>}
      {!found.ok &&
        found.problems.map((problem) => {
          const { what, todo } = describeProblem(problem, names);
          return (
            <p key={what} className="need">
              <b>{what}</b> {todo}
            </p>
          );
        })}
      <div className="rem">
        {found.ok && (
          <Button look="ink" isAutoFocused onPress={() => ink(found.value)}>
            {ROUTES.ink}
          </Button>
        )}
        <Button onPress={() => setSeed((now) => (now + 1) % 1_000_000)}>{ROUTES.again}</Button>
        <Button onPress={onClose}>{ROUTES.putAway}</Button>
      </div>
    </section>
  );
}

function describeNature({ nature, longestLeg }: RouteSuggestion, design: string): string {
  const { isLatin, isFreeOfMeetings, isBalanced, legs } = nature;
  const meetings = isLatin ? ROUTES.isLatin : isFreeOfMeetings ? ROUTES.isFree : '';
  const walked = design === 'balanced' ? ROUTES.legsWalked(legs.distinct, legs.possible) : '';
  const balance = isBalanced ? ROUTES.isBalanced : walked;
  const longest = longestLeg ? ROUTES.longest(...longestLeg.leg, longestLeg.metres) : '';
  return [meetings, balance, longest].filter(Boolean).join(' ');
}
