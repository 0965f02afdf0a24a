import { mkdir, rename } from 'node:fs/promises';
import path from 'node:path';
import { type BringPorts, bringClips } from '../../app/bring-clips.ts';
import type { CallOutput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { listSources, openBringPorts } from '../bring-ports.ts';
import { writeProxy } from '../media/proxy.ts';
import { describeWriteError } from '../write-error.ts';
import { type DeskParts, withLesson, withMarking } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';
import { openSharedJob, type SharedJob } from './shared-job.ts';

/** The calls that bring clips in, and that make them playable. */
export function buildBringCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'openInbox' | 'closeInbox' | 'bringClips' | 'prepareProxy'> {
  const { inboxes } = desk;
  const proxies = new Map<string, SharedJob<Outcome<string, Problem>>>();
  return {
    openInbox: ({ lesson, files }) =>
      withLesson(desk, lesson, async (session) => {
        const opened = await inboxes.open(session.getClipsFolder(), files);
        if (!opened.ok) return opened;
        const { token } = opened.value;
        const uploads = files.map((file, at) => ({ path: file.path, url: `/inbox/${token}/${at}` }));
        return succeed({ inbox: token, uploads });
      }),
    closeInbox: async ({ inbox }) => {
      await inboxes.close(inbox);
      return succeed({});
    },
    bringClips: ({ lesson, from }, context) =>
      withLesson(desk, lesson, async (session) => {
        const folders = from.map((token) => inboxes.find(token)?.folder ?? desk.tokens.find(token));
        const known = folders.filter((folder) => folder !== null);
        if (known.length < folders.length) return fail({ code: 'folder-unknown' });
        const brought = await session.inTurn(() => bring(session, known, context));
        session.readClips.renew();
        if (brought.ok) await Promise.all(from.map(inboxes.close));
        return brought;
      }),
    prepareProxy: ({ lesson, clip }, { signal, onProgress }) =>
      withMarking(desk, lesson, async (session) => {
        const file = session.findClipFile(clip);
        if (file === null) return fail({ code: 'clip-unknown', clip });
        const facts = session.getView().clips.find(({ id }) => id === clip);
        const durationSeconds = facts?.durationSeconds ?? null;
        const order = { folder: session.folder, clip, file, durationSeconds };
        // Two windows that ask for one clip wait for one film.
        const key = `${lesson} ${clip}`;
        const job = proxies.get(key) ?? openSharedJob((context) => writeProxy(order, context));
        proxies.set(key, job);
        const made = await job.join({ signal, onProgress }).finally(() => {
          if (!job.isRunning()) proxies.delete(key);
        });
        return made.ok ? succeed({ isReady: true as const }) : made;
      }),
  };
}

type Brought = Outcome<CallOutput<'bringClips'>, Problem>;

async function bring(
  session: LessonSession,
  folders: readonly string[],
  { signal, onProgress }: CallContext,
): Promise<Brought> {
  const clipsFolder = session.getClipsFolder();
  const disk = await openBringPorts(clipsFolder, signal);
  const isInbox = (folder: string) =>
    path.dirname(folder) === clipsFolder && path.basename(folder).startsWith('.inbox-');
  const ports: BringPorts = {
    ...disk,
    // What was uploaded lies on the same disk and was compared on arrival: it needs a place, not a second copy.
    copy: (source, file, toPath) =>
      isInbox(source.folder)
        ? move(path.join(source.folder, file.path), path.join(clipsFolder, ...toPath.split('/')))
        : disk.copy(source, file, toPath),
    freeBytes: () => (folders.every(isInbox) ? Promise.resolve(null) : disk.freeBytes()),
  };
  const [present, sources] = [await session.getPorts().listClips(), await listSources(folders)];
  const { plan } = session.getView();
  const brought = await bringClips(sources, present, { plan, ports, job: { signal, onProgress } });
  const problems = brought.problems
    // What was dropped has no folder of its own to be named by; each file that is no clip is.
    .filter((problem) => problem.code !== 'folder-without-clips' || !isInbox(problem.path))
    .map((problem) => hideInbox(problem, folders.filter(isInbox)));
  return succeed({ copied: [...brought.copied], alreadyThere: brought.alreadyThere, problems });
}

async function move(from: string, to: string): ReturnType<BringPorts['copy']> {
  try {
    await mkdir(path.dirname(to), { recursive: true });
    await rename(from, to);
    return succeed(null);
  } catch (error) {
    return fail(describeWriteError(error, to));
  }
}

/** The teacher dropped `Teal/notes.txt`, not a file in a folder of ours. */
function hideInbox(problem: Problem, inboxes: readonly string[]): Problem {
  if (!('path' in problem) || typeof problem.path !== 'string') return problem;
  const inbox = inboxes.find((folder) => problem.path.startsWith(folder));
  return inbox === undefined ? problem : { ...problem, path: problem.path.slice(inbox.length + 1) };
}
