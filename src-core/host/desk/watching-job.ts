import { availableParallelism } from 'node:os';
import type { ClipReading } from '../../app/clip-reading.ts';
import { isWorthWatching, watchClip } from '../../app/read-evidence.ts';
import type { ClipId } from '../../matching/observation.ts';
import type { CallContext } from './face.ts';
import { openPorts, type SessionState, type SessionWork } from './session-state.ts';
import { openSharedJob, type SharedJob } from './shared-job.ts';

/** How often, at most, what was seen is graded and told of: several clips in a row are one change. */
const TELL_MS = 400;

/** Watching all clips of a session whole. */
export interface WatchingJob extends SharedJob<null> {
  /** The teacher has this clip on the desk: it is watched next. */
  readonly prefer: (clip: ClipId) => void;
}

/** Watches clips one after another, as many at once as there are cores; nothing is watched before somebody joins. */
export function openWatchingJob(work: SessionWork): WatchingJob {
  let preferred: ClipId | null = null;
  const job = openSharedJob((context) => watchAll(work, context, () => preferred));
  return {
    ...job,
    prefer: (clip) => {
      preferred = clip;
    },
  };
}

async function watchAll(
  work: SessionWork,
  { signal, onProgress }: CallContext,
  getPreferred: () => ClipId | null,
): Promise<null> {
  const { state, folder, settleMovements } = work;
  const teller = openTeller(work.regrade);
  const tried = new Set<ClipId>();
  const tellProgress = () => {
    const films = state.clips.clips.filter(isWorthWatching);
    onProgress({ step: 'watch', done: films.filter(isDone).length, total: films.length });
  };
  const isDone = ({ id, evidence }: ClipReading) =>
    evidence.print !== null || (tried.has(id) && !underWay.has(id));
  const underWay = new Set<ClipId>();
  const watchOn = async () => {
    for (;;) {
      const clip = findNext(state, tried, getPreferred());
      if (!clip || signal.aborted) return;
      tried.add(clip.id);
      underWay.add(clip.id);
      const urgency = clip.id === getPreferred() ? 'opened' : 'background';
      const ports = openPorts(folder, state.clipsFolder, signal);
      const seen = await watchClip(ports, clip, { plan: state.lesson.plan, urgency });
      underWay.delete(clip.id);
      if (signal.aborted) return;
      putClip(state, seen);
      teller.tell();
      tellProgress();
    }
  };
  tellProgress();
  try {
    await Promise.all(Array.from({ length: availableParallelism() }, watchOn));
  } finally {
    teller.finish();
  }
  signal.throwIfAborted();
  await settleMovements();
  return null;
}

/** The clip on the desk first, then in the order of the lesson; clips that come in meanwhile are found too. */
function findNext(
  { clips: { clips } }: SessionState,
  tried: ReadonlySet<ClipId>,
  preferred: ClipId | null,
): ClipReading | undefined {
  const isWanted = (clip: ClipReading) =>
    isWorthWatching(clip) && clip.evidence.print === null && !tried.has(clip.id);
  return clips.find((clip) => clip.id === preferred && isWanted(clip)) ?? clips.find(isWanted);
}

/** Another reading may have come in meanwhile: what was seen goes to the clip as it stands now. */
function putClip(state: SessionState, { id, card, lookProblems, evidence }: ClipReading): void {
  const { look, print } = evidence;
  const clips = state.clips.clips.map((clip) =>
    clip.id === id ? { ...clip, card, lookProblems, evidence: { ...clip.evidence, look, print } } : clip,
  );
  state.clips = { ...state.clips, clips };
}

/** Calls `tell` soon after it is asked to, once for all that came meanwhile; at the end at once. */
function openTeller(tell: () => void): { readonly tell: () => void; readonly finish: () => void } {
  let timer: NodeJS.Timeout | null = null;
  const now = () => {
    timer = null;
    tell();
  };
  return {
    tell: () => {
      timer ??= setTimeout(now, TELL_MS);
    },
    finish: () => {
      if (timer === null) return;
      clearTimeout(timer);
      now();
    },
  };
}
