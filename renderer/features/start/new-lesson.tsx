import { type FormEvent, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { NEW_LESSON } from '../../text/english/new-lesson.ts';
import { PlaceLine } from '../../ui/place-line.tsx';
import { changePreferences, readPreferences } from '../../ui/preferences.ts';
import { useLessonPlace } from '../../ui/use-lesson-place.ts';
import { findLessonCode, nameLessonFolder } from './lesson-name.ts';

const FIELDS = [
  { name: 'title', label: NEW_LESSON.title, hint: NEW_LESSON.titleHint, type: 'text' },
  { name: 'className', label: NEW_LESSON.className, hint: NEW_LESSON.classHint, type: 'text' },
  { name: 'school', label: NEW_LESSON.school, hint: NEW_LESSON.schoolHint, type: 'text' },
  { name: 'date', label: NEW_LESSON.date, hint: '', type: 'date' },
  { name: 'start', label: NEW_LESSON.start, hint: '', type: 'time' },
  { name: 'end', label: NEW_LESSON.end, hint: '', type: 'time' },
] as const;

type Facts = Readonly<Record<(typeof FIELDS)[number]['name'], string>>;

/** A lesson from nothing: one form, with what was said last time filled in; then it opens at its plan. */
export function NewLesson({
  client,
  desk,
  onOpen,
  onTroubles,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onTroubles: (problems: readonly Problem[]) => void;
}) {
  const [facts, setFacts] = useState<Facts>(beginFacts);
  const at = useLessonPlace(client, desk, desk?.lessons[0]?.path ?? null);
  const make = async (event: FormEvent) => {
    event.preventDefault();
    if (!at.place) return;
    const { school, start, end, title, date } = facts;
    const reply = await client.request('newLesson', {
      into: at.place.token,
      folderName: nameLessonFolder(date, title),
      ...buildFacts(facts),
    });
    if (!reply.ok) return onTroubles(reply.problems);
    changePreferences({ lastSchool: { school, start, end } });
    if (reply.value.update.kind === 'whole') onOpen(reply.value.update.view.lesson);
  };
  return (
    <section className="sheet new-lesson" aria-label={NEW_LESSON.head}>
      <h2>{NEW_LESSON.head}</h2>
      <p className="read">{NEW_LESSON.text}</p>
      <form onSubmit={(event) => void make(event)}>
        {FIELDS.map(({ name, label, hint, type }) => (
          <label key={name} className={`new-${name}`}>
            <span>{label}</span>
            <input
              className="field"
              type={type}
              required
              maxLength={200}
              placeholder={hint}
              value={facts[name]}
              onChange={({ target }) => setFacts((now) => ({ ...now, [name]: target.value }))}
            />
          </label>
        ))}
        <PlaceLine at={at} />
        <button type="submit" className="btn ink" disabled={!at.place}>
          {NEW_LESSON.make}
        </button>
      </form>
    </section>
  );
}

function beginFacts(): Facts {
  const { school, start, end } = readPreferences().lastSchool;
  return { title: '', className: '', school, date: getToday(), start, end };
}

/** The day by this machine's clock, `2025-05-15`. */
function getToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

function buildFacts({ title, className, school, date, start, end }: Facts) {
  const period = 'p1';
  return {
    lesson: {
      code: findLessonCode(title),
      revision: 1,
      title: title.trim(),
      school: school.trim(),
      className: className.trim(),
      date,
      period,
    },
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    periods: [{ code: period, start, end }],
  };
}
