import { type ReactNode, useMemo, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import { listSections } from '../../../src-core/marking/look-back/look-back.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { FRAME } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { FolderPicker } from '../../ui/folder-picker.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { Mark } from '../../ui/mark.tsx';
import { Bar } from '../../ui/marks.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import { SectionView } from './section-view.tsx';
import { useLookBack } from './use-look-back.ts';
import './look-back.css';

/** Classes across their lessons: what is kept is shown at once, what is not up to date is added up meanwhile. */
export function LookBackScreen({
  client,
  desk,
  tools,
  onLessons,
}: {
  readonly client: DeskClient;
  readonly desk: DeskView | null;
  readonly tools: ReactNode;
  readonly onLessons: () => void;
}) {
  const [folder, setFolder] = useState<string | null>(null);
  const [isPicking, setPicking] = useState(false);
  const { gathered, problems, progress, toAdd, stop, goOn } = useLookBack(client, folder);
  const sections = useMemo(() => listSections(gathered?.summaries ?? []), [gathered]);
  const choose = async () => {
    if (!desk?.hasFolderDialog) return setPicking(true);
    const reply = await client.request('chooseFolders', { purpose: 'place' });
    const [chosen] = reply.ok ? reply.value.folders : [];
    if (chosen) setFolder(chosen.token);
  };
  return (
    <main className="look-back" id="main">
      <header className="start-head">
        <Mark />
        <h1>{LOOK_BACK.head}</h1>
        <p className="read">{LOOK_BACK.sentence}</p>
        <div className="start-tools">{tools}</div>
      </header>
      <p className="look-places">
        <Button look="bare" onPress={onLessons}>
          <Glyph name="back" /> {LOOK_BACK.lessonsAgain}
        </Button>
        <span className="folder-here">{gathered?.paths.join(', ') ?? ''}</span>
        <Button onPress={() => void choose()}>
          <Glyph name="folder" /> {LOOK_BACK.otherFolder}
        </Button>
      </p>
      {isPicking && (
        <FolderPicker
          client={client}
          wants="any"
          onChoose={({ token }) => {
            setPicking(false);
            setFolder(token);
          }}
          onClose={() => setPicking(false)}
        />
      )}
      {problems.length > 0 && (
        <StopNote title={FRAME.trouble} advice={problems.map((each) => describeProblem(each, BARE_NAMES))} />
      )}
      {progress && (
        <div className="look-run" role="status">
          <p>{LOOK_BACK.adding(progress.done, progress.total)}</p>
          <Bar share={progress.done / Math.max(1, progress.total)} label={LOOK_BACK.addingShort} />
          <Button onPress={stop}>{LOOK_BACK.stop}</Button>
        </div>
      )}
      {toAdd > 0 && (
        <p className="look-places">
          <span className="read need" role="status">
            {LOOK_BACK.notAdded(toAdd)}
          </span>
          <Button onPress={goOn}>{LOOK_BACK.goOn}</Button>
        </p>
      )}
      {gathered === null && problems.length === 0 && (
        <p className="read start-wait hatch" role="status">
          {LOOK_BACK.reading}
        </p>
      )}
      {gathered && sections.length > 0 && (
        <SectionView {...{ client, folder, gathered, sections }} key={folder} />
      )}
      {gathered && sections.length === 0 && !progress && <p className="read empty">{LOOK_BACK.empty}</p>}
    </main>
  );
}
