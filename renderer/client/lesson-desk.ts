import type { CallInput, CallName } from '../../src-core/contract/calls.ts';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { Progress } from '../../src-core/contract/progress.ts';
import type { Reply } from '../../src-core/contract/reply.ts';
import type { JournalAct } from '../../src-core/marking/journal-event.ts';
import { buildFollower } from './follow-lesson.ts';
import type { LessonState } from './lesson-state.ts';

/** The calls about a lesson that answer with its update. */
export type UpdatingCall = 'readLesson' | 'readClips' | 'setClipsFolder' | 'savePlan' | 'writeSheet';

/** What a page does with an open lesson. One a page and lesson. */
export interface LessonDesk {
  readonly lesson: LessonId;
  readonly client: DeskClient;
  readonly getState: () => LessonState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Records decisions; true once they are on the disk. What failed is in `troubles`. */
  readonly decide: (...acts: readonly JournalAct[]) => Promise<boolean>;
  readonly undo: () => Promise<boolean>;
  readonly redo: () => Promise<boolean>;
  /** Reads the folder of clips anew; joins a reading that runs. */
  readonly readClips: () => Promise<void>;
  /** Asks with the lesson and the revision that is here, and takes the update that comes back. */
  readonly ask: <Name extends UpdatingCall>(
    name: Name,
    input: Omit<CallInput<Name>, 'lesson' | 'since'>,
  ) => Promise<Reply<Name>>;
  readonly report: (problems: readonly Problem[]) => void;
  readonly putAway: () => void;
  readonly close: () => void;
}

/** How decisions get to the host: by itself at once, or through a store that outlives the page. */
export interface DecisionSender {
  /** Gives the update, or null where the desk will bring it by an event. */
  readonly send: (call: SendCall) => Promise<SendOutcome>;
}

/** What is to be recorded. */
export type SendCall =
  | { readonly name: 'decide'; readonly acts: readonly JournalAct[]; readonly since: number | null }
  | { readonly name: 'undo' | 'redo'; readonly since: number | null };

/** What came of it: the update, or why nothing was recorded. */
export type SendOutcome =
  | { readonly ok: true; readonly update: LessonUpdate | null }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Opens the desk of a lesson that the host has open, beginning with the view that opening gave. */
export function openLessonDesk(client: DeskClient, first: LessonView, sender: DecisionSender): LessonDesk {
  const follower = buildFollower(client, first);
  const { change, getState, take } = follower;
  const report = (problems: readonly Problem[]) =>
    problems.length > 0 && change({ troubles: [...getState().troubles, ...problems].slice(-20) });
  const record = async (call: SendCall): Promise<boolean> => {
    const amount = call.name === 'decide' ? call.acts.length : 1;
    change({ waiting: getState().waiting + amount });
    const outcome = await sender.send(call);
    change({ waiting: getState().waiting - amount });
    if (!outcome.ok) report(outcome.problems);
    else if (outcome.update) take(outcome.update);
    return outcome.ok;
  };
  const since = () => getState().view.revision;
  return {
    lesson: first.lesson,
    client,
    getState,
    subscribe: follower.subscribe,
    decide: (...acts) => record({ name: 'decide', acts, since: since() }),
    undo: () => record({ name: 'undo', since: since() }),
    redo: () => record({ name: 'redo', since: since() }),
    readClips: () => readClips(client, first.lesson, { ...follower, report }),
    ask: async (name, input) => {
      const whole = { ...input, lesson: first.lesson, since: since() } as CallInput<typeof name>;
      const reply = await client.request(name, whole);
      if (reply.ok) take((reply.value as { update: LessonUpdate }).update);
      return reply;
    },
    report,
    putAway: () => change({ troubles: [] }),
    close: follower.close,
  };
}

interface Reading {
  readonly getState: () => LessonState;
  readonly change: (change: Partial<LessonState>) => void;
  readonly take: (update: LessonUpdate) => void;
  readonly report: (problems: readonly Problem[]) => void;
}

async function readClips(client: DeskClient, lesson: LessonId, desk: Reading): Promise<void> {
  const { getState, change, take, report } = desk;
  if (getState().reading) return;
  const controller = new AbortController();
  const stop = () => controller.abort();
  const step: Progress = { step: 'read', done: 0, total: 0 };
  change({ reading: { progress: step, secondsLeft: null, stop } });
  const reply = await client.request(
    'readClips' satisfies CallName,
    { lesson, since: getState().view.revision },
    {
      signal: controller.signal,
      onProgress: (progress, secondsLeft) => change({ reading: { progress, secondsLeft, stop } }),
    },
  );
  change({ reading: null });
  if (reply.ok) take(reply.value.update);
  else report(reply.problems.filter(({ code }) => code !== 'call-cancelled'));
}
