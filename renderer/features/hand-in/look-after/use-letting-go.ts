import { useState } from 'react';
import type { Problem } from '../../../../src-core/contract/problem.ts';
import type { Reply } from '../../../../src-core/contract/reply.ts';
import type { HoldingScope, Holdings } from '../../../../src-core/lesson-file/deletion-log.ts';
import { TEACHER } from '../../../client/lesson-state.ts';
import type { StepProps } from '../../../client/steps.ts';
import { forgetLesson } from '../../../storage/forget-lesson.ts';
import { getPageDatabase } from '../../../storage/use-draft.ts';
import { readPreferences } from '../../../ui/preferences.ts';

/** A deletion on its way: what would go, and what went. */
export interface LettingGo {
  readonly scope: HoldingScope;
  /** Another scope is another list. */
  readonly setScope: (scope: HoldingScope) => void;
  /** Null: not listed yet. */
  readonly holdings: Holdings | null;
  readonly state: 'idle' | 'listing' | 'deleting' | 'deleted' | 'failed';
  readonly done: { readonly files: number; readonly bytes: number } | null;
  readonly problems: readonly Problem[];
  readonly list: () => Promise<void>;
  readonly letGo: () => Promise<void>;
  /** Puts the list away; watching, which stood still for it, goes on. */
  readonly leave: () => void;
}

type State = Pick<LettingGo, 'holdings' | 'state' | 'done' | 'problems'>;

const RETRY_MS = 500;

/** Longer than the host waits for a window that was closed or loaded anew, with what it was having watched. */
const MOST_TRIES = 140;

const IDLE: State = { holdings: null, state: 'idle', done: null, problems: [] };

/** Lists what would go and deletes it once it was looked at; `onDeleted` is told of films that went. */
export function useLettingGo({ desk, state: lessonState }: StepProps, onDeleted: () => void): LettingGo {
  const { client, lesson } = desk;
  const [scope, setScope] = useState<HoldingScope>('films');
  const [now, setNow] = useState<State>(IDLE);
  return {
    ...now,
    scope,
    setScope: (next) => {
      setScope(next);
      setNow(IDLE);
    },
    list: async () => {
      setNow({ ...IDLE, state: 'listing' });
      // What is watched leaves files as it goes: the list would not hold.
      lessonState.watching?.stop();
      lessonState.reading?.stop();
      const reply = await askOnceIdle(() => client.request('readHoldings', { lesson, scope }));
      const { problems } = reply;
      if (reply.ok) setNow({ ...IDLE, holdings: reply.value.holdings });
      else setNow({ ...IDLE, state: 'failed', problems });
    },
    letGo: async () => {
      if (!now.holdings) return;
      setNow({ ...now, state: 'deleting' });
      const { code } = now.holdings;
      const order = { lesson, who: TEACHER, scope, code };
      const reply = await askOnceIdle(() => client.request('deleteHoldings', order));
      if (!reply.ok) return setNow({ ...IDLE, state: 'failed', problems: reply.problems });
      const { files, bytes, isGone } = reply.value;
      setNow({ ...IDLE, state: 'deleted', done: { files, bytes }, problems: reply.problems });
      if (isGone) await leaveLesson(desk);
      else onDeleted();
    },
    leave: () => {
      setNow(IDLE);
      if (readPreferences().isWatchingByItself) void desk.watchClips();
    },
  };
}

/** What was told to stop may take a while to end: asks again for as long as that may last. */
async function askOnceIdle<Name extends 'readHoldings' | 'deleteHoldings'>(
  ask: () => Promise<Reply<Name>>,
): Promise<Reply<Name>> {
  let reply = await ask();
  for (let at = 0; at < MOST_TRIES && reply.problems.some(({ code }) => code === 'lesson-busy'); at += 1) {
    await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
    reply = await ask();
  }
  return reply;
}

/** The lesson is no more: this window forgets what it has of it and shows the other lessons. */
async function leaveLesson({ lesson, close }: StepProps['desk']): Promise<void> {
  // What it still had to keep is written first, and then all of it goes.
  close();
  await forgetLesson(getPageDatabase(), lesson);
  location.hash = '#/';
}
