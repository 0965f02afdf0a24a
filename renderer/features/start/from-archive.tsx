import { useEffect, useState } from 'react';
import type { FoundArchive } from '../../../src-core/contract/archive-calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { size } from '../../text/english/amounts.ts';
import { ARCHIVE } from '../../text/english/archive.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { ArchiveRun, useArchiveRun } from '../../ui/archive-run.tsx';
import { Button } from '../../ui/button.tsx';
import { PlaceLine } from '../../ui/place-line.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import { useLessonPlace } from '../../ui/use-lesson-place.ts';

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
  const folder = at.place?.token ?? null;
  const found = useArchives(client, folder);
  const [made, setMade] = useState<{ readonly lesson: LessonId } | null>(null);
  const [tried, setTried] = useState<string | null>(null);
  const bring = async (name: string, onlyWhole: boolean) => {
    if (folder === null) return;
    setTried(name);
    let isPart = false;
    const value = await running.run(async (watch) => {
      const reply = await client.request('restoreLesson', { folder, name, onlyWhole }, watch);
      isPart = reply.problems.length > 0;
      return reply;
    });
    if (value?.update.kind !== 'whole') return;
    const { lesson } = value.update.view;
    if (isPart) setMade({ lesson });
    else onOpen(lesson);
  };
  const hasWhole = running.problems.some((one) => {
    return one.code === 'archive-damaged' && one.whole > 0 && !one.files.includes('plan.json');
  });
  return (
    <SlipDialog title={ARCHIVE.fromTitle} onClose={onClose}>
      <p className="read">{ARCHIVE.fromText}</p>
      <PlaceLine at={at} />
      <ol className="folders">
        {found.archives.map(({ name, title, className, date, holdsClips, bytes }) => (
          <li key={name}>
            <button type="button" disabled={running.job !== null} onClick={() => void bring(name, false)}>
              <b>{title}</b> {className} · {BARE_NAMES.times.date(date)} ·{' '}
              {holdsClips ? ARCHIVE.clipsInside : ARCHIVE.clipsOutside} · {size(bytes)} · {name}
            </button>
          </li>
        ))}
      </ol>
      {found.isEmpty && <p className="pen">{ARCHIVE.noArchives}</p>}
      {found.problems.length > 0 && (
        <StopNote
          title={ARCHIVE.unusable}
          advice={found.problems.map((each) => describeProblem(each, BARE_NAMES))}
        />
      )}
      <ArchiveRun at={running} leftOut={ARCHIVE.inPart}>
        {made && (
          <Button look="ink" onPress={() => onOpen(made.lesson)}>
            {ARCHIVE.openPart}
          </Button>
        )}
        {!running.isDone && hasWhole && tried !== null && (
          <Button onPress={() => void bring(tried, true)}>{ARCHIVE.wholeOnly}</Button>
        )}
      </ArchiveRun>
    </SlipDialog>
  );
}

interface Found {
  readonly archives: readonly FoundArchive[];
  /** Of the folder, or of archives in it that cannot be restored from. */
  readonly problems: readonly Problem[];
  /** It was looked into, and there is nothing of the kind. */
  readonly isEmpty: boolean;
}

const NOTHING: Found = { archives: [], problems: [], isEmpty: false };

/** What archives lie in a folder. */
function useArchives(client: DeskClient, folder: string | null): Found {
  const [found, setFound] = useState(NOTHING);
  useEffect(() => {
    if (folder === null) return;
    let isWanted = true;
    setFound(NOTHING);
    void client.request('listArchives', { folder }).then((reply) => {
      if (!isWanted) return;
      if (!reply.ok) return setFound({ ...NOTHING, problems: reply.problems });
      const { archives, bad } = reply.value;
      const isEmpty = archives.length + bad.length === 0;
      setFound({ archives, problems: bad.map(({ problem }) => problem), isEmpty });
    });
    return () => {
      isWanted = false;
    };
  }, [client, folder]);
  return found;
}
