import path from 'node:path';
import { gradeLesson } from '../../app/grade-lesson.ts';
import { buildSummaryText, parseSummary, type SummarySource, summariseLesson } from '../../app/look-back.ts';
import { openLesson } from '../../app/open-lesson.ts';
import type { Job, LessonPorts } from '../../app/ports.ts';
import type { OpenProblem } from '../../contract/problem.ts';
import type { LessonSummary } from '../../marking/look-back/lesson-summary.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { openEvidenceCache } from '../evidence-cache.ts';
import { openLessonPorts, readTextIfThere } from '../lesson-ports.ts';
import { recallLook } from '../look-at-clip.ts';
import { countSeen, readFilesSource, type SummaryPlace } from './summary-source.ts';

/** What is kept of a lesson's figures. */
export interface FoundSummary {
  /** Null: none was made yet, or by an older program. */
  readonly summary: LessonSummary | null;
  /**
   * `fresh`: they are what grading would give now. `stale`: grading would give others, or there are none yet.
   * `films-gone`: the lesson's clips are no longer there, so the figures stand as they were then.
   */
  readonly state: 'fresh' | 'stale' | 'films-gone';
}

/** Reads what is kept of a lesson's figures, without grading anything. */
export async function findSummary(place: SummaryPlace): Promise<FoundSummary> {
  const [text, source] = await Promise.all([
    readTextIfThere(getSummaryFile(place.folder)),
    readFilesSource(place),
  ]);
  const kept = text.ok && text.value !== null ? parseSummary(text.value) : null;
  if (!kept) return { summary: null, state: 'stale' };
  const { from, summary } = kept;
  if (from.records === source.records && from.clips === source.clips) {
    return { summary, state: (await isAllSeen(place.folder, from)) ? 'fresh' : 'stale' };
  }
  return { summary, state: summary.clips > 0 && source.files === 0 ? 'films-gone' : 'stale' };
}

/** Whether nothing was seen since; where every clip was watched already, nothing can have been. */
async function isAllSeen(folder: string, { files, looked, watched }: SummarySource): Promise<boolean> {
  if (watched >= files) return true;
  const now = await countSeen(folder);
  return now.looked === looked && now.watched === watched;
}

/**
 * Grades a lesson from what is known of its clips, and keeps its figures in summary.json. Decodes nothing: a clip that
 * nobody has looked into counts as one without a card. Figures that cannot be written are given all the same, with why.
 */
export async function makeSummary(
  place: SummaryPlace,
  job: Job,
): Promise<
  | { readonly ok: true; readonly value: LessonSummary; readonly problems: readonly StorageProblem[] }
  | { readonly ok: false; readonly problems: readonly OpenProblem[] }
> {
  // Before anything is read: what changes meanwhile makes the figures stale.
  const from = { ...(await readFilesSource(place)), ...(await countSeen(place.folder)) };
  const unseen = new Set<string>();
  const ports = openRecallingPorts(place, unseen);
  const lesson = await openLesson(ports);
  if (!lesson.ok) return lesson;
  const graded = await gradeLesson(ports, lesson.value, { signal: job.signal, onProgress: () => {} });
  const summary = summariseLesson(graded, unseen.size);
  const text = buildSummaryText({ from, summary });
  const written = await writeFileAtomically(getSummaryFile(place.folder), text);
  return { ok: true, value: summary, problems: written.problems };
}

function getSummaryFile(folder: string): string {
  return path.join(folder, 'summary.json');
}

/** The lesson's ports, which answer from the evidence alone. @param unseen gets the clips that it knows nothing of */
function openRecallingPorts({ folder, clipsFolder }: SummaryPlace, unseen: Set<string>): LessonPorts {
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  return {
    ...openLessonPorts({ folder, clipsFolder, signal: new AbortController().signal }),
    lookAt: async (_, contentId) => {
      const known = (await recallLook(cache, contentId, true)) ?? (await recallLook(cache, contentId, false));
      if (!known) unseen.add(contentId);
      return known ?? { readings: [], look: null, problems: [] };
    },
  };
}
