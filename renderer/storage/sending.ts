import { type DrainParts, drainOutbox } from './drain.ts';
import type { ShownState } from './shown-state.ts';

/** How long until a host that does not answer, or cannot write, is tried again: longer each time. */
const RETRY_MS = [500, 1000, 2000, 5000] as const;

/** The conversation with the host about one lesson: one request after the other. */
export interface Sending {
  /** Sends what waits; tries again later where that fails. */
  readonly drain: () => Promise<void>;
  /** Asks for what is newer. */
  readonly catchUp: () => Promise<void>;
  readonly stop: () => void;
}

/** Runs work in one window at a time. */
export type RunAlone = (name: string, work: () => Promise<void>) => Promise<void>;

/** Each request asks from the revision that the one before it brought, so none crosses another. */
export function openSending(
  parts: Omit<DrainParts, 'onRefused'>,
  shown: ShownState,
  alone: RunAlone,
): Sending {
  const { lesson, copy } = parts;
  let turn: Promise<void> = Promise.resolve();
  let retry: ReturnType<typeof setTimeout> | null = null;
  let tries = 0;
  let isStopped = false;
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    turn = turn.then(() => (isStopped ? undefined : work()));
    return turn;
  };
  const tryLater = () => {
    if (isStopped || retry !== null) return;
    retry = setTimeout(
      () => {
        retry = null;
        void catchUp().then(drain);
      },
      RETRY_MS[Math.min(tries, RETRY_MS.length - 1)],
    );
    tries += 1;
  };
  const drainAlone = async () => {
    const onRefused = (problems: ReturnType<ShownState['get']>['refused']) =>
      shown.set({ refused: [...shown.get().refused, ...problems] });
    const end = await drainOutbox({ ...parts, onRefused });
    if (end.kind === 'idle') return;
    shown.set({
      contact: end.kind === 'away' ? 'away' : 'here',
      held: end.kind === 'held' ? end.problems : [],
    });
    if (end.kind === 'clear') tries = 0;
    else tryLater();
  };
  const drain = () => inTurn(() => alone(`routemark-outbox-${lesson}`, drainAlone));
  const catchUp = () =>
    inTurn(async () => {
      const problems = await copy.catchUp();
      const isAway = problems.some(({ code }) => code === 'desk-unreachable');
      shown.set({ contact: isAway ? 'away' : 'here' });
      if (isAway) tryLater();
    });
  return {
    drain,
    catchUp,
    stop: () => {
      isStopped = true;
      if (retry !== null) clearTimeout(retry);
    },
  };
}

/** By the browser's locks, which all windows of one origin share; without them (a test), at once. */
export function runAlone(name: string, work: () => Promise<void>): Promise<void> {
  const { locks } = (globalThis.navigator ?? {}) as Partial<Navigator>;
  return locks ? locks.request(name, work) : work();
}
