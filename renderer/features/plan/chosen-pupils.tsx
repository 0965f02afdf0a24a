import type { Plan, SquadCode } from '../../../src-core/lesson/plan.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { addGroupingRule } from './squad-edits.ts';

/** What can be done with the pupils that are chosen: move them, keep them apart or together. */
export function ChosenPupils({
  plan,
  chosen,
  onChoose,
  onMove,
  onChange,
}: {
  readonly plan: Plan;
  readonly chosen: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onMove: (ids: readonly string[], squad: SquadCode) => void;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  if (chosen.length === 0) return null;
  const rule = (kind: 'apart' | 'together') => {
    onChange(addGroupingRule(kind, chosen));
    onChoose([]);
  };
  return (
    <div className="rem chosen" role="status">
      <b>{SQUADS.chosen(chosen.length)}</b>
      <ChoiceWord
        label={SQUADS.moveToLabel}
        shown=""
        hint={SQUADS.moveTo}
        choices={plan.squads.map(({ code, name }) => [code, name] as const)}
        value={null}
        onChoose={(squad) => {
          onMove(chosen, squad);
          onChoose([]);
        }}
      />
      {chosen.length > 1 && (
        <>
          <Button onPress={() => rule('apart')}>{SQUADS.keepApart}</Button>
          <Button onPress={() => rule('together')}>{SQUADS.keepTogether}</Button>
        </>
      )}
      <Button look="bare" onPress={() => onChoose([])}>
        {SQUADS.chooseNone}
      </Button>
    </div>
  );
}
