import { type FormEvent, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId, RecentLesson } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { NEW_LESSON } from '../../text/english/new-lesson.ts';
import { PlaceLine } from '../../ui/place-line.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { useLessonPlace } from '../../ui/use-lesson-place.ts';
import { nameLessonFolder } from './lesson-name.ts';

/** A lesson once more on another day: its plan, class and photos under a new folder. */
export function CopyLesson({
  client,
  desk,
  original,
  onOpen,
  onTroubles,
  onClose,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly original: RecentLesson;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onTroubles: (problems: readonly Problem[]) => void;
  readonly onClose: () => void;
}) {
  const { lesson, title, path } = original;
  const [date, setDate] = useState('');
  const at = useLessonPlace(client, desk, path);
  const copy = async (event: FormEvent) => {
    event.preventDefault();
    if (!at.place) return;
    const opened = await client.request('openLesson', { lesson });
    if (!opened.ok) return onTroubles(opened.problems);
    const reply = await client.request('copyLesson', {
      lesson,
      into: at.place.token,
      folderName: nameLessonFolder(date, title),
      date,
      code: null,
    });
    if (!reply.ok) return onTroubles(reply.problems);
    if (reply.value.update.kind === 'whole') onOpen(reply.value.update.view.lesson);
  };
  return (
    <SlipDialog title={NEW_LESSON.copyOf(title)} onClose={onClose}>
      <p className="read">{NEW_LESSON.copyText}</p>
      <form className="copy-lesson" onSubmit={(event) => void copy(event)}>
        <label>
          <span>{NEW_LESSON.date}</span>
          <input
            className="field"
            type="date"
            required
            value={date}
            onChange={({ target }) => setDate(target.value)}
          />
        </label>
        <PlaceLine at={at} />
        <button type="submit" className="btn ink" disabled={!at.place}>
          {NEW_LESSON.makeCopy}
        </button>
      </form>
    </SlipDialog>
  );
}
