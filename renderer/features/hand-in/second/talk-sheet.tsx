import type { LessonView } from '../../../../src-core/contract/lesson-view.ts';
import type { SecondMarkingView } from '../../../../src-core/contract/second-calls.ts';
import { hasCommonMarks } from '../../../../src-core/marking/agreement/compare-markings.ts';
import type { LessonNames } from '../../../client/lesson-names.ts';
import type { StepProps } from '../../../client/steps.ts';
import { AGREEMENT } from '../../../text/english/agreement.ts';
import { SECOND } from '../../../text/english/second-marking.ts';
import { Button } from '../../../ui/button.tsx';
import { Sheet } from '../../../ui/sheet.tsx';
import { SquadMark } from '../../../ui/squads.tsx';

/** Clips and squads that the two see differently, most differences first; each clip a press from the desk. */
export function TalkSheet({
  marking: { comparison },
  lesson,
  names,
  go,
}: {
  readonly marking: SecondMarkingView;
  readonly lesson: LessonView;
  readonly names: LessonNames;
  readonly go: StepProps['go'];
}) {
  const { clip: clipCriteria, squad: squadCriteria } = lesson.plan.rubric;
  const label = (code: string) =>
    [...clipCriteria, ...squadCriteria].find((one) => one.code === code)?.label ?? code;
  const oneOnly = AGREEMENT.oneOnly(comparison);
  return (
    <Sheet label={SECOND.talk} className="col">
      <header className="hd">
        <h2>{SECOND.talk}</h2>
        {hasCommonMarks(comparison) && (
          <span className="cap">{SECOND.talkCount(comparison.clips.length + comparison.squads.length)}</span>
        )}
      </header>
      {comparison.clips.length + comparison.squads.length === 0 && (
        <p className="read pad">{AGREEMENT.toTalkAbout(comparison)}</p>
      )}
      <ul className="todo">
        {comparison.clips.map(({ clip, differing }) => {
          const squad = lesson.clips.find(({ id }) => id === clip)?.squad ?? null;
          return (
            <li key={clip}>
              <p>
                {squad !== null && <SquadMark squad={squad} />} {names.clip(clip)}
                <br />
                {differing.map(({ code, first, second }) => (
                  <span key={code} className="said">
                    {SECOND.said(label(code), first, second)}
                  </span>
                ))}
              </p>
              <Button label={SECOND.showLabel(names.clip(clip))} onPress={() => go('review', clip)}>
                {SECOND.show}
              </Button>
            </li>
          );
        })}
        {comparison.squads.map(({ squad, code, first, second }) => (
          <li key={`${squad} ${code}`}>
            <p>
              <SquadMark squad={squad} /> {AGREEMENT.gave(label(code), first, second)}
            </p>
          </li>
        ))}
      </ul>
      {oneOnly !== null && <p className="cap pad">{oneOnly}</p>}
    </Sheet>
  );
}
