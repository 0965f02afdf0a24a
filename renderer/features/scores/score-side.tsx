import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { savePlan } from '../../client/save-plan.ts';
import { AdjustSlip } from './adjust-slip.tsx';
import { CutPoints } from './cut-points.tsx';
import { getPupilName } from './describe-pupil.ts';
import { OrderRules } from './order-rules.tsx';
import type { SquadRow } from './score-table.ts';
import type { Selected } from './selection.ts';
import { SumPanel } from './sum-panel.tsx';

/** The question that lies open beside the table; null: none. */
export type Slip = 'adjust' | 'cut-points' | null;

/** Beside the table: an open question, the sum of the chosen line, the order rules. */
export function ScoreSide({
  lesson,
  desk,
  names,
  rows,
  selected,
  slip,
  setSlip,
}: {
  readonly lesson: LessonView;
  readonly desk: LessonDesk;
  readonly names: LessonNames;
  readonly rows: readonly SquadRow[];
  readonly selected: Selected | null;
  readonly slip: Slip;
  readonly setSlip: (slip: Slip) => void;
}) {
  const close = () => setSlip(null);
  const name = selected && getName(selected, names);
  return (
    <div className="side">
      {slip === 'adjust' && selected && name !== null && (
        <AdjustSlip
          key={name}
          {...{ selected, name }}
          onDecide={(decisions) => void desk.decide(...decisions)}
          onClose={close}
        />
      )}
      {slip === 'cut-points' && (
        <CutPoints
          scale={lesson.plan.scale}
          onSave={(scale) => void savePlan(desk, lesson, { scale })}
          onClose={close}
        />
      )}
      <SumPanel {...{ lesson, selected, names }} onAdjust={() => setSlip('adjust')} />
      <OrderRules
        {...{ lesson, rows, names }}
        onChoose={(orderRule) => void savePlan(desk, lesson, { orderRule })}
      />
    </div>
  );
}

function getName(selected: Selected, names: LessonNames): string {
  return selected.kind === 'pupil' ? getPupilName(selected.score) : names.squad(selected.row.squad);
}
