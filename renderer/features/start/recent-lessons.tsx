import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { START } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';

/** Lessons opened before, and the way to any other folder. */
export function RecentLessons({
  client,
  desk,
  onOpen,
  onDesk,
  onChoose,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onDesk: (desk: DeskView) => void;
  readonly onChoose: () => void;
}) {
  const forget = async (lesson: LessonId) => {
    const reply = await client.request('forgetLesson', { lesson });
    if (reply.ok && desk) onDesk({ ...desk, lessons: reply.value.lessons });
  };
  const lessons = desk?.lessons ?? [];
  return (
    <section className="sheet recent" aria-label={lessons.length === 0 ? START.own : START.recent}>
      {lessons.length === 0 ? (
        <>
          <h2>{START.own}</h2>
          <p className="read">{START.ownText}</p>
        </>
      ) : (
        <h2>{START.recent}</h2>
      )}
      <ol>
        {lessons.map(({ lesson, title, className, date, path, isDemo, isThere }) => (
          <li key={lesson}>
            <button type="button" className="recent-open" disabled={!isThere} onClick={() => onOpen(lesson)}>
              <b>{title}</b> {isDemo && <span className="cap">{START.demoMark}</span>}
              <span>
                {className} · {BARE_NAMES.times.day(date)}
              </span>
              <small>
                {path}
                {!isThere && ` · ${START.gone}`}
              </small>
            </button>
            <Button look="bare" onPress={() => void forget(lesson)}>
              {START.forgetShort}
              <span className="vh">: {START.forget(title)}</span>
            </Button>
          </li>
        ))}
      </ol>
      <Button onPress={onChoose}>
        <Glyph name="folder" /> {START.open}
      </Button>
      {desk && !desk.hasFfmpeg && <p className="pen">{START.noFfmpeg}</p>}
    </section>
  );
}
