import { useEffect, useRef, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { buildHash } from '../../client/route.ts';
import { ARCHIVE } from '../../text/english/archive.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';
import { NEW_LESSON } from '../../text/english/new-lesson.ts';
import { START } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { KeepCopy } from '../../ui/keep-copy.tsx';
import { CopyLesson } from './copy-lesson.tsx';
import { FromArchive } from './from-archive.tsx';

/** Lessons opened before, and the way to any other folder. */
export function RecentLessons({
  client,
  desk,
  onOpen,
  onLookBack,
  onDesk,
  onChoose,
  onNew,
  onTroubles,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onLookBack: () => void;
  readonly onDesk: (desk: DeskView) => void;
  readonly onChoose: () => void;
  /** Opens a copy that was just made. */
  readonly onNew: (lesson: LessonId) => void;
  readonly onTroubles: (problems: readonly Problem[]) => void;
}) {
  const forget = async (lesson: LessonId) => {
    const reply = await client.request('forgetLesson', { lesson });
    if (reply.ok && desk) onDesk({ ...desk, lessons: reply.value.lessons });
  };
  const [copied, setCopied] = useState<LessonId | null>(null);
  const lessons = desk?.lessons ?? [];
  const [kept, setKept] = useState<LessonId | null>(null);
  const [isBringing, setBringing] = useState(false);
  const original = lessons.find(({ lesson }) => lesson === copied);
  const last = lessons.find(({ isThere }) => isThere)?.lesson;
  const lastButton = useRef<HTMLButtonElement>(null);
  // Whoever comes back goes on with the lesson of last time.
  useEffect(() => {
    if (last !== undefined) lastButton.current?.focus();
  }, [last]);
  const toKeep = lessons.find(({ lesson }) => lesson === kept);
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
      <ol hidden={lessons.length === 0}>
        {lessons.map(({ lesson, title, className, date, path, isDemo, isThere, dueSince }) => (
          <li key={lesson}>
            <button
              type="button"
              className="recent-open"
              disabled={!isThere}
              ref={lesson === last ? lastButton : null}
              onClick={() => onOpen(lesson)}
            >
              <b>{title}</b> {isDemo && <span className="cap">{START.demoMark}</span>}
              <span>
                {className} · {BARE_NAMES.times.day(date)}
              </span>
              <small>
                {path}
                {!isThere && ` · ${START.gone}`}
              </small>
            </button>
            {dueSince !== null && (
              <a className="due" href={buildHash({ lesson, step: 'hand-in', target: 'look-after' })}>
                {START.due(BARE_NAMES.times.day(dueSince))}
                <span className="vh">: {title}</span>
              </a>
            )}
            <Button look="bare" isDisabled={!isThere} onPress={() => setCopied(lesson)}>
              {NEW_LESSON.copyShort}
              <span className="vh">: {title}</span>
            </Button>
            <Button look="bare" isDisabled={!isThere} onPress={() => setKept(lesson)}>
              {ARCHIVE.keepShort}
              <span className="vh">: {title}</span>
            </Button>
            <Button look="bare" onPress={() => void forget(lesson)}>
              {START.forgetShort}
              <span className="vh">: {START.forget(title)}</span>
            </Button>
          </li>
        ))}
      </ol>
      {original && (
        <CopyLesson
          key={original.lesson}
          {...{ client, desk, original, onTroubles }}
          onOpen={onNew}
          onClose={() => setCopied(null)}
        />
      )}
      <Button onPress={onChoose}>
        <Glyph name="folder" /> {START.open}
      </Button>
      {lessons.length > 0 && <Button onPress={onLookBack}>{LOOK_BACK.open}</Button>}
      <Button onPress={() => setBringing(true)}>{ARCHIVE.from}</Button>
      {toKeep && (
        <KeepCopy key={toKeep.lesson} {...{ client, desk }} original={toKeep} onClose={() => setKept(null)} />
      )}
      {isBringing && <FromArchive {...{ client, desk, onOpen }} onClose={() => setBringing(false)} />}
      {desk && !desk.hasFfmpeg && <p className="pen">{START.noFfmpeg}</p>}
    </section>
  );
}
