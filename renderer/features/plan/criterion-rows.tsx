import type { Plan } from '../../../src-core/lesson/plan.ts';
import { RUBRIC } from '../../text/english/plan-rubric.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import {
  type ClipCriterion,
  changeClipCriterion,
  changeSquadCriterion,
  removeClipCriterion,
  removeSquadCriterion,
  type SquadCriterion,
  toggleStandard,
} from './rubric-edits.ts';
import { TagWord } from './tag-word.tsx';
import { TypedWord } from './typed-word.tsx';

interface RowProps {
  readonly plan: Plan;
  /** Its place in its list, from 0. */
  readonly at: number;
  readonly onChange: (edit: PlanEdit) => void;
}

const CHECKS = Object.entries(RUBRIC.checks) as readonly (readonly [ClipCriterion['checks'], string])[];

/** A criterion of a clip: its words, who can speak for it, what it earns, which standards it speaks to. */
export function ClipCriterionRow({
  plan,
  criterion,
  at,
  onChange,
}: RowProps & { readonly criterion: ClipCriterion }) {
  const { code, label, checks, points } = criterion;
  const path = (field: string) => `rubric.clip[${at}].${field}`;
  return (
    <li>
      <TypedWord
        label={RUBRIC.labelOf(label)}
        shown={label}
        at={path('label')}
        type="text"
        value={label}
        onDecide={(value) => onChange(changeClipCriterion(code, { label: value }))}
      />
      <ChoiceWord
        label={RUBRIC.checksOf(label)}
        shown={RUBRIC.checks[checks]}
        at={path('checks')}
        choices={CHECKS}
        value={checks}
        onChoose={(value) => onChange(changeClipCriterion(code, { checks: value }))}
      />
      <Tags {...{ plan, criterion, onChange }} />
      <span className="push" />
      {plan.rubric.award.rule === 'sum' ? (
        <TypedWord
          label={RUBRIC.pointsOf(label)}
          shown={RUBRIC.points(points)}
          at={path('points')}
          type="number"
          range={RANGES.points}
          value={String(points)}
          onDecide={(value) => onChange(changeClipCriterion(code, { points: Number(value) }))}
        />
      ) : (
        <b>{RUBRIC.needed}</b>
      )}
      {plan.rubric.clip.length > 1 && (
        <Remove label={label} onPress={() => onChange(removeClipCriterion(code))} />
      )}
    </li>
  );
}

/** A criterion of a squad as a whole: its words, its most points, its standards. */
export function SquadCriterionRow({
  plan,
  criterion,
  at,
  onChange,
}: RowProps & { readonly criterion: SquadCriterion }) {
  const { code, label, maxPoints } = criterion;
  return (
    <li>
      <TypedWord
        label={RUBRIC.labelOf(label)}
        shown={label}
        at={`rubric.squad[${at}].label`}
        type="text"
        value={label}
        onDecide={(value) => onChange(changeSquadCriterion(code, { label: value }))}
      />
      <Tags {...{ plan, criterion, onChange }} />
      <span className="push" />
      <TypedWord
        label={RUBRIC.upToOf(label)}
        shown={RUBRIC.upTo(maxPoints)}
        at={`rubric.squad[${at}].maxPoints`}
        type="number"
        range={RANGES.points}
        value={String(maxPoints)}
        onDecide={(value) => onChange(changeSquadCriterion(code, { maxPoints: Number(value) }))}
      />
      <Remove label={label} onPress={() => onChange(removeSquadCriterion(code))} />
    </li>
  );
}

function Tags({
  plan,
  criterion: { code, label, standards },
  onChange,
}: Pick<RowProps, 'plan' | 'onChange'> & { readonly criterion: ClipCriterion | SquadCriterion }) {
  if (plan.standards.length === 0) return null;
  return (
    <TagWord
      label={RUBRIC.tags(label)}
      shown={RUBRIC.tagged(standards)}
      hint={RUBRIC.noTags}
      tags={plan.standards.map((standard) => [standard.code, `${standard.code} ${standard.text}`] as const)}
      chosen={standards}
      onToggle={(standard) => onChange(toggleStandard(code, standard))}
    />
  );
}

function Remove({ label, onPress }: { readonly label: string; readonly onPress: () => void }) {
  return (
    <button type="button" className="btn bare small" onClick={onPress}>
      <Glyph name="cross" />
      <span className="vh">{RUBRIC.remove(label)}</span>
    </button>
  );
}
