import { useEffect, useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { StepProps } from '../../client/steps.ts';
import type { BringJob } from './bring-job.ts';

/** What a chosen folder is for: copied into the lesson, or read where it lies. */
export type BringWay = 'copy' | 'in-place';

/** The ways to bring clips in. */
export interface Bring {
  readonly choose: (way: BringWay) => void;
  /** What the picker on the sheet is open for; null: it is not. */
  readonly picking: BringWay | null;
  readonly closePicker: () => void;
  readonly take: (way: BringWay, folders: readonly FolderRef[]) => void;
  readonly readInPlace: (folder: FolderRef) => void;
}

/** Choosing folders, by the system's dialog or the page's own, and folders dropped on a window of the shell. */
export function useBring({ desk, deskView }: StepProps, job: BringJob): Bring {
  const [picking, setPicking] = useState<BringWay | null>(null);
  useEffect(
    () =>
      desk.client.subscribe((event) => {
        if (event.kind === 'folders-dropped') void job.start({ kind: 'folders', folders: event.folders });
      }),
    [desk, job],
  );
  const readInPlace = async (folder: FolderRef) => {
    job.putAway();
    const reply = await desk.ask('setClipsFolder', { folder: folder.token });
    if (reply.ok) await desk.readClips();
    else desk.report(reply.problems);
  };
  const take = (way: BringWay, folders: readonly FolderRef[]) => {
    setPicking(null);
    const [first] = folders;
    if (!first) return;
    if (way === 'in-place') void readInPlace(first);
    else void job.start({ kind: 'folders', folders });
  };
  const choose = async (way: BringWay) => {
    if (!deskView.hasFolderDialog) return setPicking(way);
    const reply = await desk.client.request('chooseFolders', { purpose: 'clips' });
    if (reply.ok) take(way, reply.value.folders);
    else desk.report(reply.problems);
  };
  return {
    choose: (way) => void choose(way),
    picking,
    closePicker: () => setPicking(null),
    take,
    readInPlace: (folder) => void readInPlace(folder),
  };
}
