import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { SHEET_NAMES } from '../../text/english/grade-paper.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { PAPER_KIND } from '../../text/english/hand-in-paper.ts';
import { PRINT } from '../../text/english/print-step.ts';
import { Pick } from '../../ui/pick.tsx';
import { changePreferences, type PaperKind, usePreferences } from '../../ui/preferences.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { SlipList } from './slip-list.tsx';
import { listUnshown } from './unshown.ts';

const PAPERS = (['a4', 'letter'] as const).map((value) => ({ value, name: PRINT.papers[value] }));
const INKS = (['colour', 'grey'] as const).map((value) => ({ value, name: PRINT.inks[value] }));
const STILLS = (['blurred', 'shown', 'left-out'] as const).map((value) => ({
  value,
  name: PAPER_KIND.stills[value],
}));

/** What is printed: its choices, its pages, whose stills are not in it, and of slips their words. */
export function PaperPreview({
  kind,
  fileName,
  lesson,
  desk,
}: {
  readonly kind: PaperKind;
  readonly fileName: string;
  readonly lesson: LessonView;
  readonly desk: LessonDesk;
}) {
  const { paper } = usePreferences();
  const change = (part: Partial<typeof paper>) => changePreferences({ paper: { ...paper, ...part } });
  const unshown = paper.stills === 'left-out' ? [] : listUnshown(lesson);
  return (
    <Sheet label={HAND_IN.preview} className="col pvw">
      <header className="hd">
        <h2>{fileName}</h2>
        <span className="cap">{SHEET_NAMES[kind].title}</span>
      </header>
      <div className="paper-order">
        <Pick
          label={PRINT.paperLabel}
          choices={PAPERS}
          value={paper.paper}
          onChange={(value) => change({ paper: value })}
        />
        <Pick
          label={PRINT.inkLabel}
          choices={INKS}
          value={paper.isGrey ? 'grey' : 'colour'}
          onChange={(value) => change({ isGrey: value === 'grey' })}
        />
        {kind === 'grade-sheet' && (
          <Pick
            label={PAPER_KIND.stillsLabel}
            choices={STILLS}
            value={paper.stills}
            onChange={(value) => change({ stills: value })}
          />
        )}
      </div>
      {kind === 'grade-sheet' ? (
        <ul className="notes" aria-label={PAPER_KIND.holds}>
          {PAPER_KIND.gradePages(lesson.plan.squads.length).map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>{PAPER_KIND.stillsSay[paper.stills]}</li>
          {unshown.length > 0 && <li>{PAPER_KIND.unshown(unshown)}</li>}
        </ul>
      ) : (
        <SlipList {...{ kind, desk, revision: lesson.revision }} />
      )}
    </Sheet>
  );
}
