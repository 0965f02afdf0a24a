import type { Plan } from '../../../src-core/lesson/plan.ts';
import { ORDER_CHOICES, PLAN } from '../../text/english/plan-step.ts';
import { changeAward, changeTolerance, RANGES } from './plan-edits.ts';
import { ChoiceWord, TypedWord } from './word.tsx';

const RETAKES = Object.entries(PLAN.retakes) as readonly (readonly [Plan['retake'], string])[];

const TOLERANCES = [
  { name: 'togetherSeconds', words: PLAN.together, label: PLAN.togetherLabel, unit: PLAN.seconds },
  { name: 'clockDoubtSeconds', words: PLAN.doubt, label: PLAN.doubtLabel, unit: PLAN.seconds },
  { name: 'periodGraceMinutes', words: PLAN.grace, label: PLAN.graceLabel, unit: PLAN.minutes },
  { name: 'shortestClipSeconds', words: PLAN.short, label: PLAN.shortLabel, unit: PLAN.seconds },
] as const;

/** Rules and tolerances as sentences whose underlined words can be changed in place. */
export function RuleSentences({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (change: Partial<Plan>) => void;
}) {
  const { award } = plan.rubric;
  return (
    <ul className="says">
      <li>
        {PLAN.order[0]}{' '}
        <ChoiceWord
          label={PLAN.orderLabel}
          shown={PLAN.orderRules[plan.orderRule]}
          choices={ORDER_CHOICES}
          value={plan.orderRule}
          onChoose={(orderRule) => onChange({ orderRule })}
        />
        {PLAN.order[1]}
      </li>
      <li>
        {PLAN.retake[0]}{' '}
        <ChoiceWord
          label={PLAN.retakeLabel}
          shown={PLAN.retakes[plan.retake]}
          choices={RETAKES}
          value={plan.retake}
          onChoose={(retake) => onChange({ retake })}
        />{' '}
        {PLAN.retake[1]}
      </li>
      {award.rule === 'sum' ? (
        <li>{PLAN.awardSum}</li>
      ) : (
        <li>
          {PLAN.award[0]}{' '}
          <TypedWord
            label={PLAN.awardLabel}
            shown={PLAN.pointsWord(award.points)}
            type="number"
            range={RANGES.awardPoints}
            value={String(award.points)}
            onDecide={(value) => onChange(changeAward(plan, Number(value)))}
          />{' '}
          {PLAN.award[1]}
        </li>
      )}
      {TOLERANCES.map(({ name, words, label, unit }) => (
        <li key={name}>
          {words[0]}{' '}
          <TypedWord
            label={label}
            shown={unit(plan.tolerances[name])}
            type="number"
            range={RANGES[name]}
            value={String(plan.tolerances[name])}
            onDecide={(value) => onChange(changeTolerance(plan, name, Number(value)))}
          />
          {words[1] === '.' ? '' : ' '}
          {words[1]}
        </li>
      ))}
    </ul>
  );
}
