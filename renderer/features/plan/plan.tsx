import './plan.css';
import { useState } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Plan as LessonPlan } from '../../../src-core/lesson/plan.ts';
import type { StepProps } from '../../client/steps.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { ScreenHead, Sheet } from '../../ui/sheet.tsx';
import { PeriodSentences } from './period-sentences.tsx';
import { PlanChecks } from './plan-checks.tsx';
import { RotationTable } from './rotation-table.tsx';
import { RubricList } from './rubric-list.tsx';
import { RuleSentences } from './rule-sentences.tsx';
import { StationTable } from './station-table.tsx';

/** Plan: stations and rotation to look at; rules, tolerances and periods as sentences to change in place. */
export function Plan({ lesson, desk, names, go }: StepProps) {
  const { plan } = lesson;
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const change = async (part: Partial<LessonPlan>) => {
    const edited = { ...plan, ...part };
    const reply = await desk.ask('savePlan', { base: lesson.planVersion, plan: edited });
    setRefused(reply.ok ? [] : reply.problems);
  };
  const slots = Math.max(...plan.squads.map(({ route }) => route.length));
  return (
    <>
      <ScreenHead
        title={STEP_NAMES.plan}
        sentence={PLAN.sentence(lesson.pupils.length, plan.squads.length, slots)}
      >
        <Button onPress={() => go('plan', 'class-clock')}>{PLAN.classClock}</Button>
      </ScreenHead>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="left-side" tabIndex={0} aria-label={PLAN.overview}>
        <StationTable plan={plan} />
        <RotationTable plan={plan} />
      </section>
      <div className="right-side">
        <Sheet label={PLAN.rules} className="says-sheet">
          <header className="strip-head">
            <h2>{PLAN.rules}</h2>
            <span className="cap">{PLAN.rulesHint}</span>
          </header>
          <RuleSentences plan={plan} onChange={change} />
        </Sheet>
        <PlanChecks client={desk.client} {...{ plan, refused, names }} />
        <Sheet label={PLAN.periods} className="says-sheet">
          <header className="strip-head">
            <h2>{PLAN.periods}</h2>
          </header>
          <PeriodSentences plan={plan} onChange={change} />
        </Sheet>
        <RubricList plan={plan} />
      </div>
    </>
  );
}
