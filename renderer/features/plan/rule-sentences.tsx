import type { Plan } from '../../../src-core/lesson/plan.ts';
import { nameOrderRule } from '../../text/english/circuit.ts';
import { ORDER_CHOICES, RULES } from '../../text/english/plan-step.ts';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { changeLesson, changeTolerance, RANGES } from './plan-edits.ts';
import { TypedWord } from './typed-word.tsx';

const RETAKES = Object.entries(RULES.retakes) as readonly (readonly [Plan['retake'], string])[];

const TOLERANCES = [
  { name: 'togetherSeconds', words: RULES.together, label: RULES.togetherLabel, unit: RULES.seconds },
  { name: 'clockDoubtSeconds', words: RULES.doubt, label: RULES.doubtLabel, unit: RULES.seconds },
  { name: 'periodGraceMinutes', words: RULES.grace, label: RULES.graceLabel, unit: RULES.minutes },
  { name: 'shortestClipSeconds', words: RULES.short, label: RULES.shortLabel, unit: RULES.seconds },
] as const;

/** Rules and tolerances as sentences whose underlined words can be changed in place. */
export function RuleSentences({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  return (
    <ul className="says">
      <li>
        {RULES.order[0]}{' '}
        <ChoiceWord
          label={RULES.orderLabel}
          shown={nameOrderRule(plan.orderRule)}
          at="orderRule"
          choices={ORDER_CHOICES}
          value={plan.orderRule}
          onChoose={(orderRule) => onChange(() => ({ orderRule }))}
        />
        {RULES.order[1]}
      </li>
      <li>
        {RULES.retake[0]}{' '}
        <ChoiceWord
          label={RULES.retakeLabel}
          shown={RULES.retakes[plan.retake]}
          at="retake"
          choices={RETAKES}
          value={plan.retake}
          onChoose={(retake) => onChange(() => ({ retake }))}
        />{' '}
        {RULES.retake[1]}
      </li>
      {TOLERANCES.map(({ name, words, label, unit }) => (
        <li key={name}>
          {words[0]}{' '}
          <TypedWord
            label={label}
            shown={unit(plan.tolerances[name])}
            at={`tolerances.${name}`}
            type="number"
            range={RANGES[name]}
            value={String(plan.tolerances[name])}
            onDecide={(value) => onChange(changeTolerance(name, Number(value)))}
          />
          {words[1] === '.' ? '' : ' '}
          {words[1]}
        </li>
      ))}
      <li>
        {RULES.cards[0]}{' '}
        <TypedWord
          label={RULES.codeLabel}
          shown={plan.lesson.code}
          at="lesson.code"
          type="text"
          value={plan.lesson.code}
          onDecide={(value) => onChange(changeLesson({ code: value.toUpperCase() }))}
        />
        {RULES.cards[1]}{' '}
        <TypedWord
          label={RULES.revisionLabel}
          shown={String(plan.lesson.revision)}
          at="lesson.revision"
          type="number"
          range={RANGES.revision}
          value={String(plan.lesson.revision)}
          onDecide={(value) => onChange(changeLesson({ revision: Number(value) }))}
        />
        {RULES.cards[2]}
      </li>
    </ul>
  );
}
