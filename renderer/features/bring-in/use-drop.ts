import { useEffect, useState } from 'react';
import { readDroppedFiles } from '../../client/send-files.ts';
import type { StepProps } from '../../client/steps.ts';
import type { BringJob } from './bring-job.ts';
import { givePathToTray } from './give-to-tray.ts';

/** Files may be dropped anywhere in the window; a tray gives its squad to files that name none. True while files hover. */
export function useDrop({ deskView, lesson }: StepProps, job: BringJob): boolean {
  const [isOver, setOver] = useState(false);
  const { takesUploads } = deskView;
  const { squads } = lesson.plan;
  useEffect(() => {
    const over = (event: DragEvent) => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = async (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      // The shell hears of the drop by itself and tells the page which folders it was.
      if (!takesUploads || !event.dataTransfer) return;
      const code = findTraySquad(event.target);
      const tray = squads.find((squad) => squad.code === code) ?? null;
      const dropped = await readDroppedFiles(event.dataTransfer).catch(() => []);
      const files = dropped.map(({ path, file }) => ({ path: givePathToTray(path, tray, squads), file }));
      if (files.length > 0) await job.start({ kind: 'files', files });
    };
    const hear = (event: DragEvent) => void drop(event);
    document.addEventListener('dragover', over);
    document.addEventListener('dragleave', leave);
    document.addEventListener('drop', hear);
    return () => {
      document.removeEventListener('dragover', over);
      document.removeEventListener('dragleave', leave);
      document.removeEventListener('drop', hear);
    };
  }, [job, squads, takesUploads]);
  return isOver;
}

function findTraySquad(target: EventTarget | null): string | null {
  if (!(target instanceof Element)) return null;
  return target.closest<HTMLElement>('[data-squad]')?.dataset.squad ?? null;
}
