import { useEffect, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { type LessonDesk, openLessonDesk } from '../client/lesson-desk.ts';
import { TEACHER } from '../client/lesson-state.ts';
import { getPageDatabase } from '../storage/use-draft.ts';
import { readPreferences } from '../ui/preferences.ts';

interface Opened {
  readonly desk: LessonDesk | null;
  readonly troubles: readonly Problem[];
}

const NOTHING: Opened = { desk: null, troubles: [] };

/** Opens the lesson of the address, follows it. */
export function useOpenLesson(client: DeskClient, lesson: LessonId | null): Opened {
  const [opened, setOpened] = useState<Opened>(NOTHING);
  useEffect(() => {
    if (lesson === null) return setOpened(NOTHING);
    let isWanted = true;
    let desk: LessonDesk | null = null;
    void (async () => {
      const reply = await client.request('openLesson', { lesson });
      const first = reply.ok ? findWhole(reply.value.update) : await findKept(lesson, reply.problems);
      if (!isWanted) return;
      if (!first) return setOpened({ desk: null, troubles: reply.problems });
      const getWho = () => first.second?.who ?? TEACHER;
      const isWatchingByItself = () => readPreferences().isWatchingByItself;
      desk = openLessonDesk({ client, database: getPageDatabase(), first, getWho, isWatchingByItself });
      setOpened({ desk, troubles: [] });
    })();
    return () => {
      isWanted = false;
      desk?.close();
      setOpened(NOTHING);
    };
  }, [client, lesson]);
  return opened;
}

function findWhole(update: LessonUpdate): LessonView | null {
  return update.kind === 'whole' ? update.view : null;
}

/** What the page showed last, where the host does not answer: the teacher goes on, and it is sent later. */
async function findKept(lesson: LessonId, problems: readonly Problem[]): Promise<LessonView | null> {
  if (!problems.some(({ code }) => code === 'desk-unreachable')) return null;
  const kept = await getPageDatabase()
    .lessons.get(lesson)
    .catch(() => undefined);
  return kept?.view ?? null;
}
