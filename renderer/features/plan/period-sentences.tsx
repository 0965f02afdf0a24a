import type { Plan } from '../../../src-core/lesson/plan.ts';
import { RULES } from '../../text/english/plan-step.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { addPeriod, changePeriod, removePeriod } from './plan-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** The periods of the day; the lesson's own is marked and stays. */
export function PeriodSentences({
  plan: { lesson, periods },
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  return (
    <>
      <ol className="says periods">
        {periods.map(({ code, start, end }, at) => (
          <li key={code} className={code === lesson.period ? 'own' : ''} data-at={`periods[${at}]`}>
            <b>{RULES.periodName(code)}</b> {RULES.period[0]}{' '}
            <TypedWord
              label={RULES.startLabel(code)}
              shown={start}
              at={`periods[${at}].start`}
              type="time"
              value={start}
              onDecide={(value) => onChange(changePeriod(code, { start: value }))}
            />{' '}
            {RULES.period[1]}{' '}
            <TypedWord
              label={RULES.endLabel(code)}
              shown={end}
              at={`periods[${at}].end`}
              type="time"
              value={end}
              onDecide={(value) => onChange(changePeriod(code, { end: value }))}
            />
            {code !== lesson.period && (
              <button type="button" className="btn bare small" onClick={() => onChange(removePeriod(code))}>
                <Glyph name="cross" />
                <span className="vh">{RULES.removePeriod(code)}</span>
              </button>
            )}
          </li>
        ))}
      </ol>
      <Button look="bare" onPress={() => onChange(addPeriod)}>
        <Glyph name="plus" /> {RULES.addPeriod}
      </Button>
    </>
  );
}
