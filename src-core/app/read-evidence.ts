import { voteCards } from '../evidence/card-vote.ts';
import type { Plan } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import { findMovement, getMovementOptions, type KnownMovement } from './clip-evidence.ts';
import { type ClipReading, getPath } from './clip-reading.ts';
import type { GradedLesson } from './graded-lesson.ts';
import type { Job, LessonPorts, WatchReading } from './ports.ts';
import type { ClipsReading } from './read-clips.ts';

/** Whether clips are watched whole where that was not done yet: `all`, or `none` for what is known already. */
export type WatchOrder = 'all' | 'none';

/** Adds what watching the clips whole has given, and watches them first where that is asked for. */
export async function readWatches(
  ports: LessonPorts,
  reading: ClipsReading,
  { plan, job, watch }: { readonly plan: Plan; readonly job: Job; readonly watch: WatchOrder },
): Promise<ClipsReading> {
  const wanted = reading.clips.filter(isWorthWatching);
  const watched = new Map<ClipId, ClipReading>();
  let done = 0;
  await ports.mapAll(wanted, async (clip) => {
    job.signal.throwIfAborted();
    const known = await ports.recallWatch(clip.id);
    if (known) watched.set(clip.id, addPrint(clip, known));
    else if (watch === 'all') watched.set(clip.id, await watchClip(ports, clip, plan));
    done += 1;
    if (watch === 'all') job.onProgress({ step: 'watch', done, total: wanted.length });
  });
  job.signal.throwIfAborted();
  return { ...reading, clips: reading.clips.map((clip) => watched.get(clip.id) ?? clip) };
}

function addPrint(clip: ClipReading, { print }: WatchReading): ClipReading {
  return { ...clip, evidence: { ...clip.evidence, print } };
}

/** Watches a clip, and looks again at what is known of it then: the whole clip says more than a first look. */
async function watchClip(ports: LessonPorts, clip: ClipReading, plan: Plan): Promise<ClipReading> {
  const file = getPath(clip, null);
  const seen = await ports.watch(file, clip.id);
  const { readings, look, problems } = await ports.lookAt(file, clip.id);
  const card = voteCards(readings, plan);
  return addPrint({ ...clip, card, lookProblems: problems, evidence: { ...clip.evidence, look } }, seen);
}

/** Films of the day that show no class clock; a photo shows no movement. */
function isWorthWatching({ card, facts }: ClipReading): boolean {
  return card !== null && facts?.holds === 'video' && !(card.clock && !card.station);
}

/**
 * Reads the movements that a graded lesson would propose by and has not got yet. Null: it has all it can have, so
 * that grading again would change nothing.
 */
export async function readWantedMovements(
  ports: LessonPorts,
  reading: ClipsReading,
  { graded, job }: { readonly graded: GradedLesson; readonly job: Job },
): Promise<ClipsReading | null> {
  const wanted = listWanted(graded);
  if (wanted.length === 0) return null;
  const found = new Map<ClipId, KnownMovement[]>();
  let done = 0;
  await ports.mapAll(wanted, async ({ clip, options }) => {
    job.signal.throwIfAborted();
    const movement = await ports.readMovement(clip.id, options);
    found.set(clip.id, [...(found.get(clip.id) ?? []), { options, movement }]);
    done += 1;
    job.onProgress({ step: 'count', done, total: wanted.length });
  });
  job.signal.throwIfAborted();
  const clips = reading.clips.map((clip) => {
    const movements = [...clip.evidence.movements, ...(found.get(clip.id) ?? [])];
    return { ...clip, evidence: { ...clip.evidence, movements } };
  });
  return { ...reading, clips };
}

interface WantedMovement {
  readonly clip: ClipReading;
  readonly options: KnownMovement['options'];
}

/** With no tempo in mind for every watched clip of a route, and by the rule of the station whose slot it has. */
function listWanted({ lesson: { plan }, squads }: GradedLesson): readonly WantedMovement[] {
  return squads.flatMap(({ squad, clips }) =>
    clips.flatMap(({ reading, assignment }) => {
      if (!reading.evidence.print) return [];
      const station = assignment.slot === null ? null : (squad.route[assignment.slot] ?? null);
      return listOptions(plan, station)
        .filter((options) => findMovement(reading.evidence, options) === undefined)
        .map((options) => ({ clip: reading, options }));
    }),
  );
}

function listOptions(plan: Plan, station: string | null): readonly KnownMovement['options'][] {
  const free = getMovementOptions(plan, null);
  return station === null ? [free] : [free, getMovementOptions(plan, station)];
}
