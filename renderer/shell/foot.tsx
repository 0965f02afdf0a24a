import type { LessonNames } from '../client/lesson-names.ts';
import type { LessonState } from '../client/lesson-state.ts';
import type { Step } from '../client/steps.ts';
import { KEY_WORDS } from '../text/english/keys.ts';
import { FRAME } from '../text/english/window.ts';
import { KeyCap } from '../ui/key-cap.tsx';
import type { KeyId } from '../ui/keys/key-table.ts';

/** The few keys of a screen that its foot shows; all stand in the list of keys. */
const FOOT_KEYS: Readonly<Record<Step, readonly KeyId[]>> = {
  plan: [],
  'bring-in': ['add-folders', 'next-flag'],
  'line-up': ['next-flag', 'choose-station', 'move-clip', 'tablet-clock', 'keep-flag'],
  review: ['play', 'rep-down', 'frame-on', 'loop-rep', 'next-flag'],
  scores: ['open-squad', 'adjust', 'why'],
  'hand-in': ['write', 'next-flag'],
};

/** Where the lesson lies, the keys of this screen, and whether all is saved. */
export function Foot({
  state,
  names,
  step,
}: {
  readonly state: LessonState;
  readonly names: LessonNames;
  readonly step: Step;
}) {
  const { view, waiting, isReached } = state;
  return (
    <footer className="foot">
      <span className="where" title={view.path}>
        {FRAME.folder} <b>{view.path.split(/[\\/]/).at(-1)}</b>
      </span>
      {FOOT_KEYS[step].map((id) => (
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
