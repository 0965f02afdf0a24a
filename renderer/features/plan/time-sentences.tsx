import type { Plan } from '../../../src-core/lesson/plan.ts';
import { RULES } from '../../text/english/plan-step.ts';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { changeLesson, changeTiming, RANGES } from './plan-edits.ts';
import type { SlotTimes } from './slot-times.ts';
import { TypedWord } from './typed-word.tsx';

/** When the lesson is and how its minutes are spent, as two sentences. */
export function TimeSentences({
  plan: { lesson, periods, zone, timing },
  slots: { seconds, starts },
  onChange,
}: {
  readonly plan: Plan;
  readonly slots: SlotTimes;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  return (
    <>
      <p className="says">
        {RULES.lessonPeriod[0]}{' '}
        <ChoiceWord
          label={RULES.lessonPeriodLabel}
          shown={RULES.periodName(lesson.period)}
          at="lesson.period"
          choices={periods.map(({ code }) => [code, RULES.periodName(code)] as const)}
          value={lesson.period}
          onChoose={(period) => onChange(changeLesson({ period }))}
        />
        {RULES.lessonPeriod[1]}{' '}
        <TypedWord
          label={RULES.zoneLabel}
          shown={zone}
          at="zone"
          type="text"
          value={zone}
          onDecide={(value) => onChange(() => ({ zone: value }))}
        />
        {RULES.lessonPeriod[2]}
      </p>
      <p className="says" data-at="timing">
        {RULES.timing[0]}{' '}
        <TypedWord
          label={RULES.warmUpLabel}
          shown={RULES.minutes(timing.warmUpMinutes)}
          at="timing.warmUpMinutes"
          type="number"
          range={RANGES.minutes}
          value={String(timing.warmUpMinutes)}
          onDecide={(value) => onChange(changeTiming({ warmUpMinutes: Number(value) }))}
        />{' '}
        {RULES.timing[1]}{' '}
        <TypedWord
          label={RULES.clearUpLabel}
          shown={RULES.minutes(timing.clearUpMinutes)}
          at="timing.clearUpMinutes"
          type="number"
          range={RANGES.minutes}
          value={String(timing.clearUpMinutes)}
          onDecide={(value) => onChange(changeTiming({ clearUpMinutes: Number(value) }))}
        />{' '}
        {RULES.timing[2]} {seconds === null ? RULES.noTime : RULES.slotTime(starts.length, seconds)}
        {RULES.timing[3]}
      </p>
    </>
  );
}
