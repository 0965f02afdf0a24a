import { useEffect, useState } from 'react';
import type { FoundArchive } from '../../../src-core/contract/archive-calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { size } from '../../text/english/amounts.ts';
import { ARCHIVE } from '../../text/english/archive.ts';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { ArchiveRun, useArchiveRun } from './archive-run.tsx';
import { PlaceLine } from './place-line.tsx';
import { useLessonPlace } from './use-lesson-place.ts';

/** The archives of lessons in a folder; the one that is pressed becomes a lesson folder and opens. */
export function FromArchive({
  client,
  desk,
  onOpen,
  onClose,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onClose: () => void;
}) {
  const at = useLessonPlace(client, desk, desk?.lessons[0]?.path ?? null);
  const running = useArchiveRun();
  const { report } = running;
  const [archives, setArchives] = useState<readonly FoundArchive[] | null>(null);
  const folder = at.place?.token ?? null;
  useEffect(() => {
    if (folder === null) return;
    let isWanted = true;
    setArchives(null);
    void client.request('listArchives', { folder }).then((reply) => {
      if (!isWanted) return;
      setArchives(reply.ok ? reply.value.archives : null);
      report(reply.ok ? [] : reply.problems);
    });
    return () => {
      isWanted = false;
    };
  }, [client, folder, report]);
  const bring = async (name: string) => {
    if (folder === null) return;
    const made = await running.run((watch) => client.request('restoreLesson', { folder, name }, watch));
    if (made?.update.kind === 'whole') onOpen(made.update.view.lesson);
  };
  return (
    <SlipDialog title={ARCHIVE.fromTitle} onClose={onClose}>
      <p className="read">{ARCHIVE.fromText}</p>
      <PlaceLine at={at} />
      <ol className="folders">
        {archives?.map(({ name, title, className, date, holdsClips, bytes }) => (
          <li key={name}>
            <button type="button" disabled={running.job !== null} onClick={() => void bring(name)}>
              <b>{title}</b> {className} · {BARE_NAMES.times.date(date)} ·{' '}
              {holdsClips ? ARCHIVE.clipsInside : ARCHIVE.clipsOutside} · {size(bytes)} · {name}
            </button>
          </li>
        ))}
      </ol>
      {archives?.length === 0 && <p className="pen">{ARCHIVE.noArchives}</p>}
      <ArchiveRun at={running} />
    </SlipDialog>
  );
}
