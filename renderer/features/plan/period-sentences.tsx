import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { changeLessonPeriod, changePeriod } from './plan-edits.ts';
import { ChoiceWord, TypedWord } from './word.tsx';

/** The periods of the day, the lesson's own among them, and the zone that all local times are in. */
export function PeriodSentences({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (change: Partial<Plan>) => void;
}) {
  const { lesson, periods, zone } = plan;
  return (
    <>
      <p className="says">
        {PLAN.lessonPeriod[0]}{' '}
        <ChoiceWord
          label={PLAN.lessonPeriodLabel}
          shown={lesson.period}
          choices={periods.map(({ code }) => [code, code] as const)}
          value={lesson.period}
          onChoose={(period) => onChange(changeLessonPeriod(plan, period))}
        />
        {PLAN.lessonPeriod[1]}{' '}
        <TypedWord
          label={PLAN.zoneLabel}
          shown={zone}
          type="text"
          value={zone}
          onDecide={(value) => onChange({ zone: value.trim() })}
        />
        {PLAN.lessonPeriod[2]}
      </p>
      <ol className="says periods">
        {periods.map(({ code, start, end }) => (
          <li key={code} className={code === lesson.period ? 'own' : ''}>
            <b>{code}</b> {PLAN.period[0]}{' '}
            <TypedWord
              label={PLAN.startLabel(code)}
              shown={start}
              type="time"
              value={start}
              onDecide={(value) => onChange(changePeriod(plan, code, { start: value }))}
            />{' '}
            {PLAN.period[1]}{' '}
            <TypedWord
              label={PLAN.endLabel(code)}
              shown={end}
              type="time"
              value={end}
              onDecide={(value) => onChange(changePeriod(plan, code, { end: value }))}
            />
          </li>
        ))}
      </ol>
    </>
  );
}
