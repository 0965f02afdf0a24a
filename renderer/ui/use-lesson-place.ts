import { useEffect, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../src-core/contract/desk-view.ts';

/** Where a new lesson's folder goes, and the ways to choose another place. */
export interface LessonPlace {
  /** Null: not known yet. */
  readonly place: FolderRef | null;
  readonly choose: (folder: FolderRef) => void;
  /** Opens the system's dialog where there is one, else the list of folders. */
  readonly ask: () => Promise<void>;
  readonly isPicking: boolean;
  readonly stopPicking: () => void;
}

/** Begins beside a lesson that is there already, so that lessons lie together; else at home. */
export function useLessonPlace(
  client: DeskClient,
  desk: DeskView | null,
  besidePath: string | null,
): LessonPlace {
  const [place, setPlace] = useState<FolderRef | null>(null);
  const [isPicking, setPicking] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void client.request('listFolders', { folder: null }).then((reply) => {
      if (!isWanted || !reply.ok) return;
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
    choose: (folder) => {
      setPlace(folder);
      setPicking(false);
    },
    ask: async () => {
      if (!desk?.hasFolderDialog) return setPicking(true);
      const reply = await client.request('chooseFolders', { purpose: 'place' });
      const [folder] = reply.ok ? reply.value.folders : [];
      if (folder) setPlace(folder);
    },
    isPicking,
    stopPicking: () => setPicking(false),
  };
}

/** The folder that another one lies in, by its path as shown; the path itself where it lies in none. */
function getParentPath(path: string): string {
  const cut = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
  return cut > 0 ? path.slice(0, cut) : path;
}
