import { useEffect, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { type LessonDesk, openLessonDesk } from '../client/lesson-desk.ts';
import { buildSender } from '../client/send-at-once.ts';
import { readPreferences } from '../ui/preferences.ts';

interface Opened {
  readonly desk: LessonDesk | null;
  readonly troubles: readonly Problem[];
}

const NOTHING: Opened = { desk: null, troubles: [] };

/** Opens the lesson of the address, follows it, and begins to read its clips where nobody has yet. */
export function useOpenLesson(client: DeskClient, lesson: LessonId | null): Opened {
  const [opened, setOpened] = useState<Opened>(NOTHING);
  useEffect(() => {
    if (lesson === null) return setOpened(NOTHING);
    let isWanted = true;
    let desk: LessonDesk | null = null;
    void (async () => {
      const reply = await client.request('openLesson', { lesson });
      if (!isWanted) return;
      if (!reply.ok) return setOpened({ desk: null, troubles: reply.problems });
      const { update } = reply.value;
      if (update.kind !== 'whole') return;
      const sender = buildSender(client, lesson, () => readPreferences().who || 'teacher');
      desk = openLessonDesk(client, update.view, sender);
      setOpened({ desk, troubles: [] });
      if (update.view.reading.state !== 'read') void desk.readClips();
    })();
    return () => {
      isWanted = false;
      desk?.close();
      setOpened(NOTHING);
    };
  }, [client, lesson]);
  return opened;
}
