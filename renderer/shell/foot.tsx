import { listFootKeys } from '../client/foot-keys.ts';
import type { LessonNames } from '../client/lesson-names.ts';
import type { LessonState } from '../client/lesson-state.ts';
import type { Step } from '../client/steps.ts';
import { KEY_WORDS } from '../text/english/keys.ts';
import { FRAME } from '../text/english/window.ts';
import { KeyCap } from '../ui/key-cap.tsx';

/** Where the lesson lies, the keys of this screen, and whether all is saved. */
export function Foot({
  state,
  names,
  step,
  target,
}: {
  readonly state: LessonState;
  readonly names: LessonNames;
  readonly step: Step;
  readonly target: string | null;
}) {
  const { view, waiting, isReached } = state;
  return (
    <footer className="foot">
      <span className="where" title={view.path}>
        {FRAME.folder} <b>{view.path.split(/[\\/]/).at(-1)}</b>
      </span>
      {listFootKeys(view, step, target).map((id) => (
        <span key={id}>
          <KeyCap id={id} /> {KEY_WORDS[id]}
        </span>
      ))}
      <span className="push" role="status">
        {isReached ? describeSaved(view.journal.lastAt, waiting, names) : FRAME.unreachable}
      </span>
      <span>{FRAME.local}</span>
    </footer>
  );
}

function describeSaved(lastAt: string | null, waiting: number, names: LessonNames): string {
  if (waiting > 0) return FRAME.unsaved(waiting);
  return lastAt === null ? FRAME.nothingYet : FRAME.saved(names.times.second(Date.parse(lastAt)));
}
