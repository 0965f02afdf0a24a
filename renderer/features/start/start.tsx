import { type ReactNode, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { FRAME, START } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { FolderPicker } from '../../ui/folder-picker.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { Mark } from '../../ui/mark.tsx';
import { changePreferences, usePreferences } from '../../ui/preferences.ts';
import { StopNote } from '../../ui/stop-note.tsx';
import { DemoCard } from './demo-card.tsx';
import { NewLesson } from './new-lesson.tsx';
import { RecentLessons } from './recent-lessons.tsx';

/** The chooser of lessons, and the first thing a new teacher sees: the demo one press away, and a short tour. */
export function Start({
  client,
  desk,
  isOpening,
  troubles,
  tools,
  onOpen,
  onLookBack,
  onDesk,
}: {
  readonly client: DeskClient;
  /** Null: not known yet. */
  readonly desk: DeskView | null;
  readonly isOpening: boolean;
  readonly troubles: readonly Problem[];
  /** How the window looks. */
  readonly tools: ReactNode;
  /** A lesson that was just made opens at its plan. */
  readonly onOpen: (lesson: LessonId, isNew?: boolean) => void;
  readonly onLookBack: () => void;
  readonly onDesk: (desk: DeskView) => void;
}) {
  const [own, setOwn] = useState<readonly Problem[]>([]);
  const [isPicking, setPicking] = useState(false);
  const openFolder = async (folder: string) => {
    setPicking(false);
    const reply = await client.request('openLesson', { folder });
    if (!reply.ok) setOwn(reply.problems);
    else if (reply.value.update.kind === 'whole') onOpen(reply.value.update.view.lesson);
  };
  const choose = async () => {
    if (!desk?.hasFolderDialog) return setPicking(true);
    const reply = await client.request('chooseFolders', { purpose: 'lesson' });
    const [folder] = reply.ok ? reply.value.folders : [];
    if (!reply.ok) setOwn(reply.problems);
    else if (folder) await openFolder(folder.token);
  };
  useKeys({ 'open-lesson': choose });
  const openNew = (lesson: LessonId) => onOpen(lesson, true);
  const shown = [...troubles, ...own];
  const hasLessons = desk !== null && desk.lessons.length > 0;
  const recent = (
    <RecentLessons
      {...{ client, desk, onOpen, onLookBack, onDesk }}
      onChoose={choose}
      onNew={openNew}
      onTroubles={setOwn}
    />
  );
  return (
    <main className="start" id="main">
      <header className="start-head">
        <Mark />
        <h1>{hasLessons ? START.title : START.firstTitle}</h1>
        <p className="read">{START.sentence}</p>
        <div className="start-tools">{tools}</div>
      </header>
      {shown.length > 0 && (
        <StopNote title={FRAME.trouble} advice={shown.map((each) => describeProblem(each, BARE_NAMES))} />
      )}
      {isPicking && (
        <FolderPicker
          client={client}
          wants="lesson"
          onChoose={(folder) => void openFolder(folder.token)}
          onClose={() => setPicking(false)}
        />
      )}
      {isOpening ? (
        <p className="read start-wait hatch" role="status">
          {START.opening}
        </p>
      ) : (
        <div className="start-sheets">
          {hasLessons && recent}
          <DemoCard
            // Before it is known what was opened before, nothing has the focus.
            key={String(desk === null)}
            isFirst={desk !== null && !hasLessons}
            {...{ client, onOpen }}
            onTroubles={setOwn}
          />
          <NewLesson client={client} desk={desk} onOpen={openNew} onTroubles={setOwn} />
          {!hasLessons && recent}
          <Tour />
        </div>
      )}
    </main>
  );
}

function Tour() {
  const { isTourDone } = usePreferences();
  if (isTourDone) return null;
  return (
    <section className="sheet tour" aria-label={START.tourTitle}>
      <h2>{START.tourTitle}</h2>
      <ol>
        {START.tour.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
      <Button onPress={() => changePreferences({ isTourDone: true })}>{START.tourDone}</Button>
    </section>
  );
}
