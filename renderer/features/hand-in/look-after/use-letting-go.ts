import { useEffect, useRef, useState } from 'react';
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
  /** Puts the list away; reading and watching, which stood still for it, go on. */
  readonly leave: () => void;
}

type State = Pick<LettingGo, 'holdings' | 'state' | 'done' | 'problems'>;

const RETRY_MS = 500;

/** Longer than the host waits for a window that was closed or loaded anew, with what it was having watched. */
const MOST_TRIES = 140;

const IDLE: State = { holdings: null, state: 'idle', done: null, problems: [] };

/** Lists what would go and deletes it once it was looked at; `onDeleted` is told of films that went. */
export function useLettingGo({ desk }: StepProps, onDeleted: () => void): LettingGo {
  const { client, lesson } = desk;
  const [scope, setScope] = useState<HoldingScope>('films');
  const [now, setNow] = useState<State>(IDLE);
  const standstill = useStandstill(desk);
  const end = (next: State) => {
    setNow(next);
    standstill.end();
  };
  return {
    ...now,
    scope,
    setScope: (next) => {
      setScope(next);
      end(IDLE);
    },
    list: async () => {
      setNow({ ...IDLE, state: 'listing' });
      standstill.begin();
      const ask = () => client.request('readHoldings', { lesson, scope });
      const reply = await askOnceIdle(ask, standstill.isOn);
      const { problems } = reply;
      if (reply.ok) setNow({ ...IDLE, holdings: reply.value.holdings, problems });
      else end({ ...IDLE, state: 'failed', problems });
    },
    letGo: async () => {
      if (!now.holdings) return;
      setNow({ ...now, state: 'deleting' });
      const { code } = now.holdings;
      const order = { lesson, who: TEACHER, scope, code };
      const ask = () => client.request('deleteHoldings', order);
      const reply = await askOnceIdle(ask, standstill.isOn);
      if (!reply.ok) return end({ ...IDLE, state: 'failed', problems: reply.problems });
      const { files, bytes, isGone } = reply.value;
      if (isGone) return leaveLesson(desk);
      end({ ...IDLE, state: 'deleted', done: { files, bytes }, problems: reply.problems });
      onDeleted();
    },
    leave: () => end(IDLE),
  };
}

interface Standstill {
  readonly begin: () => void;
  readonly isOn: () => boolean;
  /** Reads on and watches on as before; nothing where it was not begun. */
  readonly end: () => void;
}

/** What reads and watches leaves files as it goes, and a list would not hold: all of it stands still, and goes on after. */
function useStandstill(desk: StepProps['desk']): Standstill {
  const isOn = useRef(false);
  const end = () => {
    if (!isOn.current) return;
    isOn.current = false;
    if (desk.getState().view.reading.state !== 'read') void desk.readClips();
    else if (readPreferences().isWatchingByItself) void desk.watchClips();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: it ends with the sheet, and only then
  useEffect(() => end, []);
  return {
    begin: () => {
      isOn.current = true;
      const { watching, reading } = desk.getState();
      watching?.stop();
      reading?.stop();
    },
    isOn: () => isOn.current,
    end,
  };
}

/** What was told to stop may take a while to end: asks again for as long as that may last and is wanted. */
async function askOnceIdle<Name extends 'readHoldings' | 'deleteHoldings'>(
  ask: () => Promise<Reply<Name>>,
  isWanted: () => boolean,
): Promise<Reply<Name>> {
  let reply = await ask();
  const isBusy = () => reply.problems.some(({ code }) => code === 'lesson-busy');
  for (let at = 0; at < MOST_TRIES && isBusy() && isWanted(); at += 1) {
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
