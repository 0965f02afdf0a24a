import { voteCards } from '../evidence/card-vote.ts';
import { isLasting } from '../evidence/evidence-problem.ts';
import type { Plan } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import { findMovement, getMovementOptions, type KnownMovement, type UnisonPlace } from './clip-evidence.ts';
import { type ClipReading, getPath } from './clip-reading.ts';
import type { GradedLesson } from './graded-lesson.ts';
import type { Job, LessonPorts, WatchReading, WatchUrgency } from './ports.ts';
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
    else if (watch === 'all') watched.set(clip.id, await watchClip(ports, clip, { plan }));
    done += 1;
    if (watch === 'all') job.onProgress({ step: 'watch', done, total: wanted.length });
  });
  job.signal.throwIfAborted();
  return { ...reading, clips: reading.clips.map((clip) => watched.get(clip.id) ?? clip) };
}

function addPrint(clip: ClipReading, { print, problems }: WatchReading): ClipReading {
  // Then the clip counts as not watched.
  if (!problems.every(isLasting)) return clip;
  return { ...clip, evidence: { ...clip.evidence, print } };
}

/**
 * Watches a clip, and looks again at what is known of it then: the whole clip says more than a first look. Stopped or
 * without ffmpeg, the clip comes back as it was.
 */
export async function watchClip(
  ports: Pick<LessonPorts, 'watch' | 'lookAt'>,
  clip: ClipReading,
  { plan, urgency = 'asked' }: { readonly plan: Plan; readonly urgency?: WatchUrgency },
): Promise<ClipReading> {
  const file = getPath(clip, null);
  const seen = await ports.watch(file, clip.id, urgency);
  const { readings, look, problems } = await ports.lookAt(file, clip.id, clip.facts?.durationSeconds ?? null);
  const card = voteCards(readings, plan);
  return addPrint({ ...clip, card, lookProblems: problems, evidence: { ...clip.evidence, look } }, seen);
}

/** Films of the day that show no class clock; a photo shows no movement. */
export function isWorthWatching({ card, facts }: ClipReading): boolean {
  return card !== null && facts?.holds === 'video' && !(card.clock && !card.station);
}

/** A movement that would be proposed by, if it were read. */
export interface WantedMovement {
  readonly clip: ClipId;
  readonly options: KnownMovement['options'];
}

/** Movements that were read, by clip. */
export type ReadMovements = ReadonlyMap<ClipId, readonly KnownMovement[]>;

/** Reads movements from what watching has left; decodes nothing. */
export async function readMovements(
  ports: Pick<LessonPorts, 'mapAll' | 'readMovement'>,
  wanted: readonly WantedMovement[],
  job: Job,
): Promise<ReadMovements> {
  const found = new Map<ClipId, KnownMovement[]>();
  let done = 0;
  await ports.mapAll(wanted, async ({ clip, options }) => {
    job.signal.throwIfAborted();
    const movement = await ports.readMovement(clip, options);
    found.set(clip, [...(found.get(clip) ?? []), { options, movement }]);
    done += 1;
    job.onProgress({ step: 'count', done, total: wanted.length });
  });
  job.signal.throwIfAborted();
  return found;
}

/** The reading with movements added to its clips. */
export function addMovements(reading: ClipsReading, found: ReadMovements): ClipsReading {
  const clips = reading.clips.map((clip) => {
    const fresh = found.get(clip.id);
    if (!fresh) return clip;
    return { ...clip, evidence: { ...clip.evidence, movements: [...clip.evidence.movements, ...fresh] } };
  });
  return { ...reading, clips };
}

/**
 * The movements that a graded lesson would propose by and has not got yet: with no tempo in mind for every watched
 * clip of a route, by the rule of the station whose slot it has, and with the performers that the teacher sees. Empty:
 * it has all it can have.
 */
export function listWantedMovements({
  lesson: { plan, journal },
  squads,
}: GradedLesson): readonly WantedMovement[] {
  return squads.flatMap(({ squad, clips }) =>
    clips.flatMap(({ reading, assignment }) => {
      if (!reading.evidence.print) return [];
      const station = assignment.slot === null ? null : (squad.route[assignment.slot] ?? null);
      const lanes = journal.decisions.lanesOf.get(reading.id) ?? null;
      return listOptions(plan, { station, lanes })
        .filter((options) => findMovement(reading.evidence, options) === undefined)
        .map((options) => ({ clip: reading.id, options }));
    }),
  );
}

function listOptions(plan: Plan, { station, lanes }: UnisonPlace): readonly KnownMovement['options'][] {
  const free = getMovementOptions(plan, null);
  const own = station === null ? [] : [getMovementOptions(plan, station)];
  return [free, ...own, ...(lanes === null ? [] : [getMovementOptions(plan, station, lanes)])];
}
