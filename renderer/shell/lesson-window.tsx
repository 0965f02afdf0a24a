import { type ComponentType, useCallback, useMemo, useSyncExternalStore } from 'react';
import type { DeskView } from '../../src-core/contract/desk-view.ts';
import type { LessonDesk } from '../client/lesson-desk.ts';
import { buildLessonNames, hideSquads } from '../client/lesson-names.ts';
import type { Route } from '../client/route.ts';
import { STEPS, type Step, type StepProps } from '../client/steps.ts';
import { BringIn } from '../features/bring-in/bring-in.tsx';
import { ClassClock } from '../features/class-clock/class-clock.tsx';
import { buildClockTarget, readClockTarget } from '../features/class-clock/clock-target.ts';
import { HandIn } from '../features/hand-in/hand-in.tsx';
import { LineUp } from '../features/line-up/line-up.tsx';
import { Plan } from '../features/plan/plan.tsx';
import { Review } from '../features/review/review.tsx';
import { Scores } from '../features/scores/scores.tsx';
import { FRAME } from '../text/english/window.ts';
import { useKeys } from '../ui/keys/use-keys.ts';
import { usePreferences } from '../ui/preferences.ts';
import { SquadsProvider } from '../ui/squads.tsx';
import { ErrorBoundary } from './error-boundary.tsx';
import { Foot } from './foot.tsx';
import { Masthead } from './masthead.tsx';
import { SecondStrip } from './second-strip.tsx';
import { Troubles } from './troubles.tsx';

const SCREENS: Readonly<Record<Step, ComponentType<StepProps>>> = {
  plan: Plan,
  'bring-in': BringIn,
  'line-up': LineUp,
  review: Review,
  scores: Scores,
  'hand-in': HandIn,
};

/** An open lesson: masthead with the way, one step's screen, foot. */
export function LessonWindow({
  desk,
  deskView,
  route,
  go: goTo,
  onKeys,
}: {
  readonly desk: LessonDesk;
  readonly deskView: DeskView;
  readonly route: Route;
  readonly go: (change: Partial<Route>) => void;
  /** Shows the list of keys. */
  readonly onKeys: () => void;
}) {
  const state = useSyncExternalStore(desk.subscribe, desk.getState);
  const { areNamesHidden } = usePreferences();
  const { view } = state;
  const { plan, clips } = view;
  // The same names as long as no clip has another path: decisions alone change none.
  const paths = clips.map(({ id, path }) => `${id} ${path}`).join('\n');
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the clips, only ids and paths go into names
  const known = useMemo(() => buildLessonNames({ plan, clips }), [plan, paths]);
  const isBlind = areNamesHidden && route.step === 'review';
  const names = useMemo(() => (isBlind ? hideSquads(known, plan.squads) : known), [isBlind, known, plan]);
  const { second } = view;
  const go = useCallback(
    (step: Step, target: string | null = null) => {
      if (!second || step === 'review') return goTo({ step, target });
      // A second marking is Review alone: every other step is the lesson's own, and one of them compares what is recorded.
      void desk.settle().then(() => goTo({ step, target, lesson: second.of }));
    },
    [goTo, second, desk],
  );
  const steps = Object.fromEntries(STEPS.map((step) => [step, () => go(step)]));
  const openLesson = useCallback(() => goTo({ lesson: null }), [goTo]);
  useKeys({ ...steps, undo: desk.undo, redo: desk.redo, 'open-lesson': openLesson });
  const shiftMs = route.step === 'plan' ? readClockTarget(route.target) : null;
  if (shiftMs !== null) {
    const onShift = (next: number) => go('plan', buildClockTarget(next));
    return <ClassClock {...{ plan, names, shiftMs, onShift }} onClose={() => go('plan')} />;
  }
  const Screen = SCREENS[route.step];
  return (
    <SquadsProvider plan={plan} isHidden={isBlind}>
      <div className={`app at-${route.step}`}>
        <button type="button" className="skip" onClick={skipToMain}>
          {FRAME.skip}
        </button>
        <Masthead
          state={state}
          desk={desk}
          names={names}
          step={route.step}
          go={go}
          onKeys={onKeys}
          onLessons={openLesson}
        />
        {second && <SecondStrip who={second.who} onBack={() => go('hand-in', 'second-marking')} />}
        <main id="main" tabIndex={-1} className={route.step}>
          <Troubles state={state} desk={desk} names={names} />
          <ErrorBoundary key={route.step}>
            <Screen lesson={view} {...{ state, desk, deskView, names, go }} target={route.target} />
          </ErrorBoundary>
        </main>
        <Foot {...{ state, names }} step={route.step} target={route.target} />
      </div>
    </SquadsProvider>
  );
}

function skipToMain(): void {
  document.getElementById('main')?.focus();
}
