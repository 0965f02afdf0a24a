import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Progress } from '../../../src-core/contract/progress.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { type DroppedFile, sendFiles } from '../../client/send-files.ts';

/** Bringing clips in: nothing, under way, or stopped midway with all that is needed to go on. */
export type BringState =
  | { readonly kind: 'idle'; readonly done: BringDone | null }
  | {
      readonly kind: 'running';
      /** `sending`: from the browser to the host; `copying`: into the lesson. */
      readonly phase: 'sending' | 'copying';
      readonly progress: Progress | null;
      readonly secondsLeft: number | null;
      readonly stop: () => void;
    }
  | {
      readonly kind: 'stopped';
      readonly problems: readonly Problem[];
      /** Goes on: what was copied and checked is not copied again. */
      readonly goOn: () => Promise<void>;
      /** The one folder that could be read in place instead; null where there is none. */
      readonly folder: FolderRef | null;
    };

/** What the last bringing came to. */
export interface BringDone {
  readonly copied: number;
  readonly alreadyThere: number;
  /** What was left where it lay, and why. */
  readonly problems: readonly Problem[];
  /** The one folder that was asked for, to be read in place instead; null where it was none or several. */
  readonly folder: FolderRef | null;
}

/** What is to be brought in: folders of this machine, or files dropped on a browser. */
export type BringSource =
  | { readonly kind: 'folders'; readonly folders: readonly FolderRef[] }
  | { readonly kind: 'files'; readonly files: readonly DroppedFile[] };

/** A lesson's bringing-in; it goes on while other screens are shown. */
export interface BringJob {
  readonly getState: () => BringState;
  readonly subscribe: (listener: () => void) => () => void;
  readonly start: (source: BringSource) => Promise<void>;
  readonly putAway: () => void;
}

const jobs = new WeakMap<LessonDesk, BringJob>();

/** The one bringing-in of an open lesson. */
export function getBringJob(desk: LessonDesk): BringJob {
  const job = jobs.get(desk) ?? buildBringJob(desk);
  jobs.set(desk, job);
  return job;
}

const IDLE: BringState = { kind: 'idle', done: null };

/** What ends copying midway; everything else concerns one file, and the others come in. */
const ENDS_COPYING: readonly Problem['code'][] = [
  'disk-too-small',
  'disk-full',
  'not-writable',
  'not-readable',
  'folder-missing',
  'is-a-folder',
  'name-too-long',
  'copy-differs',
  'write-failed',
];

function buildBringJob(desk: LessonDesk): BringJob {
  let state: BringState = IDLE;
  const listeners = new Set<() => void>();
  const set = (next: BringState) => {
    state = next;
    for (const listener of listeners) listener();
  };
  const start = async (source: BringSource): Promise<void> => {
    if (state.kind === 'running') return;
    const controller = new AbortController();
    const stop = () => controller.abort();
    const show = (phase: 'sending' | 'copying', progress: Progress | null, secondsLeft: number | null) =>
      set({ kind: 'running', phase, progress, secondsLeft, stop });
    const folder = findOnlyFolder(source);
    const give = (problems: readonly Problem[]) =>
      set({ kind: 'stopped', problems, goOn: () => start(source), folder });
    show(source.kind === 'files' ? 'sending' : 'copying', null, null);
    const from = await listTokens(desk, source, { signal: controller.signal, show });
    if (!from.ok) return give(from.problems);
    const reply = await desk.client.request(
      'bringClips',
      { lesson: desk.lesson, from: [...from.tokens] },
      {
        signal: controller.signal,
        onProgress: (progress, secondsLeft) => show('copying', progress, secondsLeft),
      },
    );
    if (!reply.ok) return give(reply.problems);
    const { copied, alreadyThere, problems } = reply.value;
    const ending = problems.filter(({ code }) => ENDS_COPYING.includes(code));
    if (ending.length > 0) give(ending);
    else set({ kind: 'idle', done: { copied: copied.length, alreadyThere, problems, folder } });
    await desk.readClips();
  };
  return {
    getState: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    start,
    putAway: () => set(IDLE),
  };
}

function findOnlyFolder(source: BringSource): FolderRef | null {
  const [folder, ...others] = source.kind === 'folders' ? source.folders : [];
  return others.length === 0 ? (folder ?? null) : null;
}

interface Sending {
  readonly signal: AbortSignal;
  readonly show: (phase: 'sending', progress: Progress, secondsLeft: number | null) => void;
}

type Tokens =
  | { readonly ok: true; readonly tokens: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

async function listTokens(desk: LessonDesk, source: BringSource, sending: Sending): Promise<Tokens> {
  if (source.kind === 'folders') return { ok: true, tokens: source.folders.map(({ token }) => token) };
  const sent = await sendFiles(desk.client, desk.lesson, source.files, {
    signal: sending.signal,
    onProgress: (progress, secondsLeft) => sending.show('sending', progress, secondsLeft),
  });
  return sent.ok ? { ok: true, tokens: [sent.value] } : { ok: false, problems: sent.problems };
}
