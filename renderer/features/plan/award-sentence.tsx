import type { Plan } from '../../../src-core/lesson/plan.ts';
import { RUBRIC } from '../../text/english/plan-rubric.ts';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import { changeAward, changeAwardRule } from './rubric-edits.ts';
import { TypedWord } from './typed-word.tsx';

type AwardRule = Plan['rubric']['award']['rule'];

const RULES = Object.entries(RUBRIC.awardRules) as readonly (readonly [AwardRule, string])[];

/** How criteria met become a clip's points, as a sentence. */
export function AwardSentence({
  award,
  onChange,
}: {
  readonly award: Plan['rubric']['award'];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const isAll = award.rule === 'all-or-nothing';
  const words = isAll ? RUBRIC.awardAll : RUBRIC.awardSum;
  return (
    <p className="says">
      {words[0]}{' '}
      {isAll && (
        <>
          <TypedWord
            label={RUBRIC.awardPointsLabel}
            shown={RUBRIC.points(award.points)}
            at="rubric.award.points"
            type="number"
            range={RANGES.points}
            value={String(award.points)}
            onDecide={(value) => onChange(changeAward(Number(value)))}
          />{' '}
          {words[1]}{' '}
        </>
      )}
      <ChoiceWord
        label={RUBRIC.awardLabel}
        shown={RUBRIC.awardRules[award.rule]}
        at="rubric.award"
        choices={RULES}
        value={award.rule}
        onChoose={(rule) => onChange(changeAwardRule(rule))}
      />
      {words.at(-1)}
    </p>
  );
}
