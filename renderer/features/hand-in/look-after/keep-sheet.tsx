import { useState } from 'react';
import type { KeepingView } from '../../../../src-core/contract/keeping-view.ts';
import type { LessonNames } from '../../../client/lesson-names.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { Button } from '../../../ui/button.tsx';
import { Sheet } from '../../../ui/sheet.tsx';
import { findUsualDay, type Keeping } from './use-keeping.ts';

/** The last day on which the lesson is kept, other lessons whose day is over, and what was deleted so far. */
export function KeepSheet({
  keeping,
  className,
  names,
}: {
  readonly keeping: Keeping;
  /** Of the lesson's class. */
  readonly className: string;
  readonly names: LessonNames;
}) {
  const { view } = keeping;
  return (
    <Sheet label={LOOK_AFTER.keep} className="col">
      <header className="hd">
        <h2>{LOOK_AFTER.keep}</h2>
      </header>
      {view === null ? (
        <p className="pen pad">{LOOK_AFTER.asking}</p>
      ) : (
        <>
          <LastDay key={view.until} {...{ keeping, view, className, names }} />
          <Due view={view} names={names} />
          <Log view={view} names={names} />
        </>
      )}
    </Sheet>
  );
}

function LastDay({
  keeping,
  view,
  className,
  names,
}: {
  readonly keeping: Keeping;
  readonly view: KeepingView;
  readonly className: string;
  readonly names: LessonNames;
}) {
  const [typed, setTyped] = useState(view.until ?? '');
  const usual = view.until === null ? findUsualDay(view, className) : null;
  return (
    <form
      className="pad keep"
      onSubmit={(event) => {
        event.preventDefault();
        if (typed !== '') void keeping.setUntil(typed);
      }}
    >
      <p className={view.isOverdue || view.isUnreadable ? 'read need' : 'read'} role="status">
        {describeDay(view, names)}
      </p>
      <label>
        {LOOK_AFTER.lastDay}
        <input
          type="date"
          className="field"
          value={typed}
          min={view.today}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
        />
      </label>
      <div className="rem">
        <button type="submit" className="btn" disabled={typed === '' || typed === view.until}>
          {LOOK_AFTER.setDay}
        </button>
        {view.until !== null && (
          <Button onPress={() => void keeping.setUntil(null)}>{LOOK_AFTER.noDay}</Button>
        )}
        {usual !== null && (
          <button type="button" className="btn pencilled" onClick={() => void keeping.setUntil(usual)}>
            {LOOK_AFTER.usual(className, names.times.date(usual))}
          </button>
        )}
      </div>
      <p className="cap">{LOOK_AFTER.policy}</p>
    </form>
  );
}

function describeDay({ until, isOverdue, isUnreadable }: KeepingView, { times }: LessonNames): string {
  if (isUnreadable) return LOOK_AFTER.unreadable;
  if (until === null) return LOOK_AFTER.noDate;
  return isOverdue ? LOOK_AFTER.overdue(times.date(until)) : LOOK_AFTER.until(times.date(until));
}

function Due({ view, names }: { readonly view: KeepingView; readonly names: LessonNames }) {
  const due = view.others.filter(({ isOverdue }) => isOverdue);
  if (due.length === 0) return null;
  return (
    <section className="pad part" aria-label={LOOK_AFTER.due}>
      <h3>{LOOK_AFTER.due}</h3>
      <ul className="lines">
        {due.map(({ lesson, title, className, date, until }) => (
          <li key={lesson}>
            {LOOK_AFTER.dueLesson(title, className, names.times.date(date), names.times.date(until ?? date))}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Log({ view, names }: { readonly view: KeepingView; readonly names: LessonNames }) {
  return (
    <section className="pad part" aria-label={LOOK_AFTER.log}>
      <h3>{LOOK_AFTER.log}</h3>
      {view.deletions.length === 0 && <p className="cap">{LOOK_AFTER.noDeletions}</p>}
      <ul className="lines">
        {view.deletions.toReversed().map((entry) => (
          <li key={entry.at}>
            {LOOK_AFTER.deletion(names.times.dateAndMinute(Date.parse(entry.at)), entry)}
          </li>
        ))}
      </ul>
    </section>
  );
}
