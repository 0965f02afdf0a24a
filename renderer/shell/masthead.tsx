import { useMemo } from 'react';
import type { LessonDesk } from '../client/lesson-desk.ts';
import type { LessonNames } from '../client/lesson-names.ts';
import type { LessonState } from '../client/lesson-state.ts';
import { STEPS, type Step } from '../client/steps.ts';
import { countPlan, countWay } from '../client/way-counts.ts';
import { describeDecision } from '../text/english/decisions.ts';
import { describeCount, FRAME, STEP_NAMES } from '../text/english/window.ts';
import { Glyph } from '../ui/glyph.tsx';
import { KeyCap } from '../ui/key-cap.tsx';
import { Mark } from '../ui/mark.tsx';
import { DisplayTools } from './display-tools.tsx';

/** Lesson and class, the way with its counts, undo and redo, and how the window looks. */
export function Masthead({
  state,
  desk,
  names,
  step,
  go,
  onKeys,
  onLessons,
}: {
  readonly state: LessonState;
  readonly desk: LessonDesk;
  readonly names: LessonNames;
  readonly step: Step;
  readonly go: (step: Step) => void;
  readonly onKeys: () => void;
  readonly onLessons: () => void;
}) {
  const { plan, pupils, journal } = state.view;
  const { title, className, date, period } = plan.lesson;
  const hasClips = state.view.clips.length > 0;
  const ofPlan = useMemo(() => countPlan({ plan, pupils }, hasClips), [plan, pupils, hasClips]);
  const counts = { ...countWay(state.view), plan: ofPlan };
  return (
    <header className="mast">
      <button type="button" className="mast-id" onClick={onLessons} title={FRAME.lessons}>
        <Mark />
        <span>
          <b title={title}>{title}</b>
          <small title={className}>
            {className} · {names.times.day(date)}, {FRAME.period(period)}
          </small>
        </span>
        <span className="vh">. {FRAME.lessons}</span>
      </button>
      <nav className="way" aria-label={FRAME.way}>
        <ol>
          {STEPS.map((each) => (
            <li key={each}>
              <a
                href={`#${each}`}
                aria-current={each === step ? 'page' : undefined}
                onClick={(event) => {
                  event.preventDefault();
                  go(each);
                  // As after any link, reading and keys go on in what it led to.
                  document.getElementById('main')?.focus({ preventScroll: true });
                }}
              >
                <b>{STEP_NAMES[each]}</b>
                <span className={counts[each].needs ? 'need' : ''}>{describeCount(counts[each].left)}</span>
              </a>
            </li>
          ))}
        </ol>
      </nav>
      <div className="mast-tools">
        <Recall way="undo" decision={journal.undoes} names={names} onPress={desk.undo} />
        <Recall way="redo" decision={journal.redoes} names={names} onPress={desk.redo} />
        <DisplayTools />
        <button type="button" className="btn bare" aria-label={FRAME.allKeys} onClick={onKeys}>
          {FRAME.keys} <KeyCap id="keys" />
        </button>
      </div>
    </header>
  );
}

function Recall({
  way,
  decision,
  names,
  onPress,
}: {
  readonly way: 'undo' | 'redo';
  readonly decision: LessonState['view']['journal']['undoes'];
  readonly names: LessonNames;
  readonly onPress: () => unknown;
}) {
  const nothing = way === 'undo' ? FRAME.nothingToUndo : FRAME.nothingToRedo;
  const label = decision ? `${FRAME[way]}: ${describeDecision(decision, names)}` : nothing;
  return (
    <button
      type="button"
      className="btn bare"
      aria-label={label}
      title={label}
      disabled={!decision}
      onClick={onPress}
    >
      <Glyph name={way} />
    </button>
  );
}
