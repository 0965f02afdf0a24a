import type { ClipReading } from '../../app/clip-reading.ts';
import { type ClipsReading, readClips } from '../../app/read-clips.ts';
import { readWatches } from '../../app/read-evidence.ts';
import type { ReadingView } from '../../contract/lesson-view.ts';
import type { CallContext } from './face.ts';
import { openPorts, type SessionWork } from './session-state.ts';

/**
 * How often, at most, half-read clips are graded and shown; and at most a fifth of the time goes into it. Clips that were
 * read before are all there sooner than that.
 */
const PARTIAL_MS = 400;
const PARTIAL_SHARE = 5;

/**
 * Reads a lesson's folder of clips into its session, with what an earlier watching left, and shows what is known on
 * the way. Rejects when stopped; what was read by then stays.
 */
export async function readAll(work: SessionWork, context: CallContext): Promise<null> {
  const { state, folder, regrade, settleMovements } = work;
  const { signal } = context;
  const ports = openPorts(folder, state.clipsFolder, signal);
  let nextMs = performance.now() + PARTIAL_MS;
  const show = (clips: ClipsReading, reading: ReadingView) => {
    Object.assign(state, { clips: keepSeen(clips, state.clips), reading });
    const beganMs = performance.now();
    regrade();
    const endMs = performance.now();
    nextMs = endMs + Math.max(PARTIAL_MS, PARTIAL_SHARE * (endMs - beganMs));
  };
  const onClips = (getClips: () => readonly ClipReading[]) => {
    if (performance.now() >= nextMs && !signal.aborted)
      show({ clips: getClips(), problems: [] }, { ...state.reading, state: 'cards' });
  };
  const onProgress: CallContext['onProgress'] = (progress) => {
    const { step, done, total } = progress;
    state.reading = { state: step === 'read' ? 'stamps' : 'cards', done, total };
    context.onProgress(progress);
  };
  const { plan } = state.lesson;
  try {
    state.reading = { state: 'stamps', done: 0, total: 0 };
    const read = await readClips(ports, plan, { signal, onProgress, onClips });
    const clips = await readWatches(ports, read, { plan, job: { signal, onProgress }, watch: 'none' });
    const { length } = clips.clips;
    show(clips, { state: 'cards', done: length, total: length });
    await settleMovements();
    show(state.clips, { state: 'read', done: length, total: length });
    return null;
  } catch (reason) {
    show(state.clips, { ...state.reading, state: 'stopped' });
    throw reason;
  }
}

/** A clip that was looked at or watched before, and is not yet again, keeps what was seen, so that nothing flickers. */
function keepSeen(clips: ClipsReading, before: ClipsReading): ClipsReading {
  const known = new Map(before.clips.map((clip) => [clip.id, clip]));
  return { ...clips, clips: clips.clips.map((clip) => keep(clip, known.get(clip.id))) };
}

function keep(clip: ClipReading, known: ClipReading | undefined): ClipReading {
  if (!known || known === clip) return clip;
  const { look, print, movements } = clip.evidence;
  const evidence = {
    look: look ?? known.evidence.look,
    print: print ?? known.evidence.print,
    movements: movements.length > 0 ? movements : known.evidence.movements,
  };
  if (clip.card !== null || clip.lookProblems.length > 0) return { ...clip, evidence };
  return { ...clip, card: known.card, lookProblems: known.lookProblems, evidence };
}
