import { useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, RecentLesson } from '../../src-core/contract/desk-view.ts';
import { ARCHIVE } from '../text/english/archive.ts';
import { ArchiveRun, useArchiveRun } from './archive-run.tsx';
import { Button } from './button.tsx';
import { PlaceLine } from './place-line.tsx';
import { SlipDialog } from './slip-dialog.tsx';
import { useLessonPlace } from './use-lesson-place.ts';

/** A lesson in one archive, with its clips or without. */
export function KeepCopy({
  client,
  desk,
  original: { lesson, title, path },
  onClose,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly original: Pick<RecentLesson, 'lesson' | 'title' | 'path'>;
  readonly onClose: () => void;
}) {
  const at = useLessonPlace(client, desk, path);
  const running = useArchiveRun();
  const [withClips, setWithClips] = useState(true);
  const [said, setSaid] = useState<string | null>(null);
  const keep = async () => {
    const into = at.place?.token;
    if (into === undefined) return;
    setSaid(null);
    const kept = await running.run((watch) =>
      client.request('keepLesson', { lesson, into, withClips }, watch),
    );
    if (!kept) return;
    const made = ARCHIVE.made(kept.path, kept.files, kept.bytes);
    setSaid(kept.holdsClips ? made : `${made} ${ARCHIVE.withoutClips}`);
  };
  return (
    <SlipDialog title={ARCHIVE.keepTitle(title)} onClose={onClose}>
      <p className="read">{ARCHIVE.keepText}</p>
      <PlaceLine at={at} />
      <label>
        <input type="checkbox" checked={withClips} onChange={({ target }) => setWithClips(target.checked)} />{' '}
        {ARCHIVE.clipsToo}
      </label>
      <Button look="ink" isDisabled={!at.place || running.job !== null} onPress={() => void keep()}>
        {ARCHIVE.keep}
      </Button>
      <ArchiveRun at={running} leftOut={ARCHIVE.leftOut} />
      {said !== null && (
        <p className="read" role="status">
          {said}
        </p>
      )}
    </SlipDialog>
  );
}
