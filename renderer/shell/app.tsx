import { useEffect, useRef, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { keepLastStep, readLastStep } from '../client/last-step.ts';
import { LookBackScreen } from '../features/look-back/look-back.tsx';
import { Start } from '../features/start/start.tsx';
import { useKeys } from '../ui/keys/use-keys.ts';
import { DisplayTools } from './display-tools.tsx';
import { ErrorBoundary } from './error-boundary.tsx';
import { KeyList } from './key-list.tsx';
import { LessonWindow } from './lesson-window.tsx';
import { useFreshDesk } from './use-fresh-desk.ts';
import { useMenu } from './use-menu.ts';
import { useOpenLesson } from './use-open-lesson.ts';
import { useRoute } from './use-route.ts';

/** The whole window: the chooser of lessons, or an open lesson at one of its steps. */
export function App({ client }: { readonly client: DeskClient }) {
  const [route, go] = useRoute();
  const { desk, troubles } = useOpenLesson(client, route.lesson);
  const [deskView, setDeskView] = useFreshDesk(client, route.lesson === null);
  const [failed, setFailed] = useState<readonly Problem[]>([]);
  const [areKeysShown, setKeysShown] = useState(false);
  const showKeys = () => setKeysShown(true);
  useKeys({ keys: showKeys });
  useMenu(client);
  // Whoever is in the midst of a lesson stays there: the second start raises that window, or gets one of its own.
  const isFree = useRef(true);
  isFree.current = route.lesson === null && !route.isLookingBack;
  useEffect(() => {
    const read = async () => {
      const reply = await client.request('readDesk', {});
      if (!reply.ok) return setFailed(reply.problems);
      setFailed([]);
      setDeskView(reply.value);
      const { openFirst } = reply.value;
      if (openFirst && location.hash.length < 3) go({ lesson: openFirst, step: readLastStep(openFirst) });
    };
    void read();
    return client.subscribe((event) => {
      if (event.kind === 'reconnected') void read();
      const isTaken = event.kind === 'lesson-asked' && isFree.current;
      if (isTaken) go({ lesson: event.lesson, step: readLastStep(event.lesson) });
    });
  }, [client, go, setDeskView]);
  useEffect(() => {
    if (route.lesson !== null) keepLastStep(route.lesson, route.step);
  }, [route.lesson, route.step]);
  const open = (lesson: LessonId, isNew = false) =>
    go({ lesson, step: isNew ? 'plan' : readLastStep(lesson) });
  return (
    <ErrorBoundary key={route.lesson}>
      {desk && deskView ? (
        <LessonWindow {...{ desk, deskView, route, go }} onKeys={showKeys} />
      ) : route.isLookingBack ? (
        <LookBackScreen
          client={client}
          desk={deskView}
          tools={<DisplayTools />}
          onLessons={() => go({ lesson: null, isLookingBack: false })}
        />
      ) : (
        <Start
          client={client}
          desk={deskView}
          isOpening={route.lesson !== null && troubles.length === 0}
          troubles={[...failed, ...troubles]}
          tools={<DisplayTools />}
          onOpen={open}
          onLookBack={() => go({ lesson: null, isLookingBack: true })}
          onDesk={setDeskView}
        />
      )}
      {areKeysShown && <KeyList onClose={() => setKeysShown(false)} />}
    </ErrorBoundary>
  );
}
