import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { Glyph } from '../../ui/glyph.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { removeGroupingRule } from './squad-edits.ts';

/** Who is kept apart and who stays together when squads are formed, each rule to be forgotten. */
export function GroupingRules({
  plan: { grouping },
  pupils,
  onChange,
}: {
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const names = new Map(pupils.map(({ id, given, family }) => [id, `${given} ${family}`]));
  const rules = (['together', 'apart'] as const).flatMap((kind) =>
    grouping[kind].map((ids, at) => ({
      kind,
      at,
      words: SQUADS[kind](ids.map((id) => names.get(id) ?? id)),
    })),
  );
  if (rules.length === 0) return null;
  return (
    <ul className="says" data-at="grouping">
      {rules.map(({ kind, at, words }) => (
        <li key={`${kind} ${words}`}>
          {words}
          <button
            type="button"
            className="btn bare small"
            onClick={() => onChange(removeGroupingRule(kind, at))}
          >
            <Glyph name="cross" />
            <span className="vh">{SQUADS.forget(words)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
