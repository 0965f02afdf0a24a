import { type ReactNode, useMemo, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import { listSections } from '../../../src-core/marking/look-back/look-back.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { withTimeLeft } from '../../text/english/amounts.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { FRAME } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { FolderChoice, useFolderChoice } from '../../ui/folder-choice.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
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
  const { gathered, problems, job, toAdd, stop, goOn } = useLookBack(client, folder);
  useKeys({ 'open-lesson': onLessons });
  const sections = useMemo(() => listSections(gathered?.summaries ?? []), [gathered]);
  const choice = useFolderChoice(client, { desk, purpose: 'place' }, ({ token }) => setFolder(token));
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
        <Button onPress={choice.ask}>
          <Glyph name="folder" /> {LOOK_BACK.otherFolder}
        </Button>
      </p>
      <FolderChoice at={choice} />
      {problems.length > 0 && (
        <StopNote title={FRAME.trouble} advice={problems.map((each) => describeProblem(each, BARE_NAMES))} />
      )}
      {job && (
        <div className="look-run" role="status">
          <p>{withTimeLeft(LOOK_BACK.adding(job.progress.done, job.progress.total), job.secondsLeft)}</p>
          <Bar share={job.progress.done / Math.max(1, job.progress.total)} label={LOOK_BACK.addingShort} />
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
      {gathered && sections.length === 0 && !job && <p className="read empty">{LOOK_BACK.empty}</p>}
    </main>
  );
}
