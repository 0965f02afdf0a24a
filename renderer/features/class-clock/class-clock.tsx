import './class-clock.css';
import { getClassMoment, getClassTimes } from '../../../src-core/lesson/class-clock.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { getZonedMs } from '../../client/zoned-ms.ts';
import { CLASS_CLOCK } from '../../text/english/class-clock.ts';
import { Button } from '../../ui/button.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { SquadsProvider } from '../../ui/squads.tsx';
import { ClockCode } from './clock-code.tsx';
import { ClockTools } from './clock-tools.tsx';
import { Dial } from './dial.tsx';
import { SquadsNow } from './squads-now.tsx';
import { useWallClock } from './use-wall-clock.ts';

/** What a class clock is shown for. */
export interface ClassClockProps {
  readonly plan: Plan;
  readonly names: LessonNames;
  /** How much later than its bell the class began. */
  readonly shiftMs: number;
  readonly onShift: (shiftMs: number) => void;
  readonly onClose: () => void;
}

/** The class clock: what is left of this part of the lesson, where each squad is, and the code of the instant. */
export function ClassClock({ plan, names, shiftMs, onShift, onClose }: ClassClockProps) {
  const { nowMs, jumpMs, dismissJump } = useWallClock();
  useKeys({ 'back-out': onClose });
  const { date } = plan.lesson;
  const period = plan.periods.find(({ code }) => code === plan.lesson.period) ?? plan.periods[0];
  if (!period) return null;
  const bell = {
    startMs: getZonedMs(date, period.start, plan.zone),
    endMs: getZonedMs(date, period.end, plan.zone),
  };
  const times = getClassTimes(plan, bell, shiftMs);
  const { part, next, remainingMs, remainingShare } = getClassMoment(times, nowMs);
  const said = CLASS_CLOCK.part(part, times.slots);
  const figures = writeRemaining(remainingMs);
  return (
    <SquadsProvider plan={plan} isHidden={false}>
      <div className="class-clock">
        <header className="cc-top">
          <h1>
            {plan.lesson.title} <span className="vh">{CLASS_CLOCK.title}</span>
          </h1>
          <p role="status">{said}</p>
          {shiftMs !== 0 && <p>{CLASS_CLOCK.shifted(shiftMs, names.times.minute(times.startMs))}</p>}
          <ClockTools
            part={said}
            shiftMs={shiftMs}
            onStart={() => onShift(nowMs - bell.startMs)}
            {...{ onShift, onClose }}
          />
        </header>
        <main className="cc-mid" id="main" tabIndex={-1}>
          <Dial share={remainingShare}>
            <p>{CLASS_CLOCK.until(part)}</p>
            <div className={`cc-figures of-${figures.length}`} role="timer" aria-live="off">
              {figures}
            </div>
            <p>{CLASS_CLOCK.afterwards(next)}</p>
          </Dial>
          <ClockCode nowMs={nowMs} time={names.times.second(nowMs)} />
        </main>
        {jumpMs !== null && (
          <div className="cc-jump" role="alert">
            <p>{CLASS_CLOCK.jumped(jumpMs)}</p>
            <Button onPress={dismissJump}>{CLASS_CLOCK.seen}</Button>
          </div>
        )}
        <footer>
          <SquadsNow plan={plan} part={part} />
          <p className="cc-care">{CLASS_CLOCK.care}</p>
        </footer>
      </div>
    </SquadsProvider>
  );
}

/** `2:14`, `1:02:14`, or days where a lesson is far off. A second begun counts: the figures reach 0:00 at the end. */
function writeRemaining(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  if (hours >= 48) return `${Math.floor(hours / 24)} d`;
  const rest = String(seconds % 60).padStart(2, '0');
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`;
}
