import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { ClipId } from '../matching/observation.ts';
import { type ClipReading, getPath } from './clip-reading.ts';
import { listClips } from './find-clip.ts';
import { gradeLesson } from './grade-lesson.ts';
import type { OpenLesson } from './open-lesson.ts';
import type { Job, LessonPorts, WatchReading } from './ports.ts';
import { isWorthWatching } from './read-evidence.ts';

/** What is known of one clip after its lesson was watched. */
export interface WatchedClip {
  readonly id: ClipId;
  /** Below the folder of clips. */
  readonly file: string;
  /** `passed-over`: a photo, a film of the class clock, or one of another day. */
  readonly state: 'watched' | 'failed' | 'passed-over';
  readonly problems: readonly EvidenceProblem[];
}

/** A lesson after its clips were watched. */
export interface WatchedLesson {
  /** Every clip that was handed in, once, in order of path. */
  readonly clips: readonly WatchedClip[];
  /** How many of them were watched now, because nothing was known of them yet. */
  readonly watchedNow: number;
}

/**
 * Looks at and watches every clip of a lesson, and reads the movements that proposals want, so that whoever opens the
 * lesson next need not wait. Nothing is decided and nothing recorded; what is known already is not done again.
 */
export async function watchLesson(ports: LessonPorts, lesson: OpenLesson, job: Job): Promise<WatchedLesson> {
  const problems = new Map<ClipId, readonly EvidenceProblem[]>();
  let watchedNow = 0;
  const note = <Reading extends WatchReading | null>(id: ClipId, reading: Reading): Reading => {
    if (reading) problems.set(id, reading.problems);
    return reading;
  };
  const noting: LessonPorts = {
    ...ports,
    recallWatch: async (id) => note(id, await ports.recallWatch(id)),
    watch: async (path, id, isOpened) => {
      const seen = note(id, await ports.watch(path, id, isOpened));
      if (seen.print.seconds.length > 0) watchedNow += 1;
      return seen;
    },
  };
  const graded = await gradeLesson(noting, lesson, job, { watch: 'all' });
  const byId = new Map(listClips(graded).map((clip) => [clip.id, clip]));
  const clips = [...byId.values()].map((clip) => describeClip(clip, problems.get(clip.id)));
  return { clips: clips.sort((a, b) => (a.file < b.file ? -1 : 1)), watchedNow };
}

function describeClip(clip: ClipReading, watching: readonly EvidenceProblem[] | undefined): WatchedClip {
  const { id, lookProblems, evidence } = clip;
  const isWatched = (evidence.print?.seconds.length ?? 0) > 0;
  const isWanted = clip.facts === null || isWorthWatching(clip);
  const state = isWatched ? 'watched' : isWanted ? 'failed' : 'passed-over';
  return { id, file: getPath(clip, null), state, problems: watching ?? lookProblems };
}
