import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RotationTable } from './rotation-table.tsx';
import { changeRotation } from './route-edits.ts';
import { RouteProposal } from './route-proposal.tsx';
import { RouteWishes } from './route-wishes.tsx';
import type { SlotTimes } from './slot-times.ts';
import { WalkLine } from './walk-line.tsx';

type Design = Plan['rotation']['design'];

const DESIGNS = Object.entries(ROUTES.designs) as readonly (readonly [Design, string])[];

/** The rotation: by hand in its cells, or proposed and inked; what it is made by, and how a class would walk it. */
export function RotationSheet({
  plan,
  slots,
  names,
  onChange,
}: {
  readonly plan: Plan;
  readonly slots: SlotTimes;
  readonly names: LessonNames;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const [isProposed, setProposed] = useState(false);
  const { design } = plan.rotation;
  return (
    <Sheet label={ROUTES.head} className="rotw">
      <header className="strip-head" data-at="rotation">
        <h2>{ROUTES.head}</h2>
        <span className="push" />
        <Button onPress={() => setProposed(true)}>{ROUTES.rotate}</Button>
      </header>
      {isProposed ? (
        <RouteProposal {...{ plan, slots, names, onChange }} onClose={() => setProposed(false)} />
      ) : (
        <RotationTable plan={plan} times={slots.starts} onChange={onChange} />
      )}
      <WalkLine plan={plan} names={names} />
      <p className="says">
        {ROUTES.design[0]}{' '}
        <ChoiceWord
          label={ROUTES.designLabel}
          shown={ROUTES.designs[design]}
          at="rotation.design"
          choices={DESIGNS}
          value={design}
          onChoose={(value) => onChange(changeRotation({ design: value }))}
        />
        {ROUTES.design[1]}
      </p>
      <RouteWishes plan={plan} onChange={onChange} />
    </Sheet>
  );
}
