import { useEffect, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { type FolderAsk, useFolderChoice } from './folder-choice.tsx';

/** Where a new lesson's folder goes, and the way to choose another place. */
export interface LessonPlace {
  /** Null: not known yet. */
  readonly place: FolderRef | null;
  readonly choice: FolderAsk;
}

/** Begins beside a lesson that is there already, so that lessons lie together; else at home. */
export function useLessonPlace(
  client: DeskClient,
  desk: DeskView | null,
  besidePath: string | null,
): LessonPlace {
  const [place, setPlace] = useState<FolderRef | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const choice = useFolderChoice(client, { desk, purpose: 'place' }, setPlace);
  useEffect(() => {
    let isWanted = true;
    void client.request('listFolders', { folder: null }).then((reply) => {
      if (!isWanted) return;
      if (!reply.ok) return setProblems(reply.problems);
      const { folders } = reply.value;
      const beside = besidePath === null ? null : getParentPath(besidePath);
      setPlace((now) => now ?? folders.find(({ path }) => path === beside) ?? folders[0] ?? null);
    });
    return () => {
      isWanted = false;
    };
  }, [client, besidePath]);
  return {
    place,
    choice: { ...choice, problems: place ? choice.problems : [...problems, ...choice.problems] },
  };
}

/** The folder that another one lies in, by its path as shown; the path itself where it lies in none. */
function getParentPath(path: string): string {
  const cut = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
  return cut > 0 ? path.slice(0, cut) : path;
}
