import type { ReactNode } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { PLAN, RULES } from '../../text/english/plan-step.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { changeLesson } from './plan-edits.ts';
import { countSlots } from './rotation.ts';
import { TypedWord } from './typed-word.tsx';

const TEXTS = [
  { field: 'title', label: PLAN.titleLabel },
  { field: 'className', label: PLAN.classLabel },
  { field: 'school', label: PLAN.schoolLabel },
] as const;

/** What lesson this is, as one sentence with its words to change; tools at the right. */
export function PlanHead({
  plan,
  pupils,
  names,
  onChange,
  children,
}: {
  readonly plan: Plan;
  /** How many pupils the class has. */
  readonly pupils: number;
  readonly names: LessonNames;
  readonly onChange: (edit: PlanEdit) => void;
  readonly children?: ReactNode;
}) {
  const { lesson, periods, squads } = plan;
  return (
    <div className="head screen-head">
      <h1>{STEP_NAMES.plan}</h1>
      <p className="lesson-facts">
        {TEXTS.map(({ field, label }, at) => (
          <span key={field}>
            {at > 0 && `${PLAN.facts[at - 1]} `}
            <TypedWord
              label={label}
              shown={lesson[field]}
              at={`lesson.${field}`}
              type="text"
              value={lesson[field]}
              onDecide={(value) => onChange(changeLesson({ [field]: value }))}
            />{' '}
          </span>
        ))}
        {PLAN.facts[2]}{' '}
        <TypedWord
          label={PLAN.dateLabel}
          shown={names.times.day(lesson.date)}
          at="lesson.date"
          type="date"
          value={lesson.date}
          onDecide={(value) => onChange(changeLesson({ date: value }))}
        />
        {PLAN.facts[3]}{' '}
        <ChoiceWord
          label={PLAN.periodLabel}
          shown={RULES.periodName(lesson.period)}
          choices={periods.map(
            ({ code, start, end }) => [code, `${RULES.periodName(code)}, ${start}–${end}`] as const,
          )}
          value={lesson.period}
          onChoose={(period) => onChange(changeLesson({ period }))}
        />
        {PLAN.facts[4]}{' '}
        <span className="amounts">{PLAN.amounts(pupils, squads.length, countSlots(squads))}</span>
      </p>
      <span className="push" />
      {children}
    </div>
  );
}
