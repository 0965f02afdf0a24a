import './plan.css';
import './stations.css';
import './rotation.css';
import './squads.css';
import { useMemo, useState } from 'react';
import { buildLessonNames } from '../../client/lesson-names.ts';
import type { StepProps } from '../../client/steps.ts';
import { PLAN, RULES } from '../../text/english/plan-step.ts';
import { Button } from '../../ui/button.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { BriefingSheet } from './briefing-sheet.tsx';
import { findStationPlace } from './find-field.ts';
import { LibraryLine } from './library-line.tsx';
import { PeriodSentences } from './period-sentences.tsx';
import { PlanChecks } from './plan-checks.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { PlanHead } from './plan-head.tsx';
import { PrintSheet } from './print-sheet.tsx';
import { RefusedNote } from './refused-note.tsx';
import { RotationSheet } from './rotation-sheet.tsx';
import { RubricSheet } from './rubric-sheet.tsx';
import { RuleSentences } from './rule-sentences.tsx';
import { getSlotTimes } from './slot-times.ts';
import { SquadSheet } from './squad-sheet.tsx';
import { addStation } from './station-edits.ts';
import { StationTable } from './station-table.tsx';
import { TimeSentences } from './time-sentences.tsx';
import { useClass } from './use-class.ts';
import { useFieldFocus } from './use-field-focus.ts';
import { useLibrary } from './use-library.ts';
import { usePlanDraft } from './use-plan-draft.ts';
import { usePlanProblems } from './use-plan-problems.ts';
import { usePrintPack } from './use-print-pack.ts';
import { VersionSheet } from './version-sheet.tsx';

/** Plan: the whole lesson before class as a printed form whose words are changed in place; each change is saved at once. */
export function Plan(props: StepProps) {
  const { lesson, desk } = props;
  const { draft, state } = usePlanDraft(lesson, desk);
  const { plan, refused } = state;
  // The sheet's own words, saved or not.
  const names = useMemo(() => buildLessonNames({ plan, clips: lesson.clips }), [plan, lesson.clips]);
  const problems = usePlanProblems(desk.client, lesson.lesson, plan);
  const [opened, setOpened] = useState<string | null>(null);
  const focusField = useFieldFocus(props.target);
  const onChange = (edit: PlanEdit) => void draft.change(edit);
  const goTo = (path: string) => {
    const place = findStationPlace(path);
    if (place !== null) setOpened(plan.stations[place]?.code ?? null);
    focusField(path);
  };
  const add = () => {
    onChange(addStation);
    focusField(`stations[${plan.stations.length}].place`);
  };
  useKeys({ undo: draft.undo, redo: draft.redo });
  const slots = getSlotTimes(plan);
  const shelf = useLibrary(desk.client);
  const pack = usePrintPack(desk);
  const pupilDesk = useClass({ ...props, names }, draft);
  return (
    <>
      <PlanHead plan={plan} pupils={lesson.pupils.length} {...{ names, onChange }}>
        <Button onPress={() => props.go('plan', 'class-clock')}>{PLAN.classClock}</Button>
      </PlanHead>
      <RefusedNote {...{ refused, names }} onRetry={draft.retry} onDrop={draft.drop} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="left-side" tabIndex={0} aria-label={PLAN.left}>
        <StationTable
          {...{ plan, opened }}
          onOpen={setOpened}
          onAdd={add}
          acts={{ library: shelf.exercises, onChange }}
        >
          <LibraryLine {...{ shelf, names }} />
        </StationTable>
        <SquadSheet plan={plan} pupilDesk={pupilDesk} />
        <BriefingSheet {...{ plan, onChange }} />
      </section>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="right-side" tabIndex={0} aria-label={PLAN.right}>
        <RotationSheet {...{ plan, slots, names, onChange }} />
        <PlanChecks {...{ problems, plan, names }} pupils={lesson.pupils} onGo={goTo} />
        <PrintSheet {...{ pack, names }} />
        <RubricSheet {...{ plan, names, onChange }} />
        <Sheet label={RULES.head} className="says-sheet">
          <header className="strip-head">
            <h2>{RULES.head}</h2>
            <span className="cap">{RULES.hint}</span>
          </header>
          <RuleSentences {...{ plan, onChange }} />
        </Sheet>
        <Sheet label={RULES.periods} className="says-sheet">
          <header className="strip-head" data-at="periods">
            <h2>{RULES.periods}</h2>
          </header>
          <TimeSentences {...{ plan, slots, onChange }} />
          <PeriodSentences {...{ plan, onChange }} />
        </Sheet>
        <VersionSheet {...{ desk, draft, names }} planVersion={lesson.planVersion} />
      </section>
    </>
  );
}
