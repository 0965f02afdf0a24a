import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { RUBRIC } from '../../text/english/plan-rubric.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { AwardSentence } from './award-sentence.tsx';
import { ClipCriterionRow, SquadCriterionRow } from './criterion-rows.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { addClipCriterion, addSquadCriterion } from './rubric-edits.ts';
import { ScaleList } from './scale-list.tsx';
import { StandardsList } from './standards-list.tsx';

/** The most criteria that clips, or squads, may have. */
const MOST = 9;

/** What clips and squads are marked on, what it earns, and the marks that points become. */
export function RubricSheet({
  plan,
  names,
  onChange,
}: {
  readonly plan: Plan;
  readonly names: LessonNames;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { clip, squad } = plan.rubric;
  return (
    <Sheet label={RUBRIC.head} className="rubric">
      <header className="strip-head" data-at="rubric">
        <h2>{RUBRIC.head}</h2>
      </header>
      <AwardSentence award={plan.rubric.award} onChange={onChange} />
      <h3>{RUBRIC.clip}</h3>
      <ul className="criteria">
        {clip.map((criterion, at) => (
          <ClipCriterionRow key={criterion.code} {...{ plan, criterion, at, onChange }} />
        ))}
      </ul>
      {clip.length < MOST && (
        <Button look="bare" onPress={() => onChange(addClipCriterion(RUBRIC.newClip))}>
          <Glyph name="plus" /> {RUBRIC.addClip}
        </Button>
      )}
      <h3>{RUBRIC.squad}</h3>
      <ul className="criteria">
        {squad.map((criterion, at) => (
          <SquadCriterionRow key={criterion.code} {...{ plan, criterion, at, onChange }} />
        ))}
      </ul>
      {squad.length < MOST && (
        <Button look="bare" onPress={() => onChange(addSquadCriterion(RUBRIC.newSquad))}>
          <Glyph name="plus" /> {RUBRIC.addSquad}
        </Button>
      )}
      <StandardsList {...{ plan, names, onChange }} />
      <ScaleList scale={plan.scale} onChange={onChange} />
    </Sheet>
  );
}
