import type { Job } from '../../app/ports.ts';
import type { LookBackProblem, OpenProblem } from '../../contract/problem.ts';
import type { LessonSummary } from '../../marking/look-back/lesson-summary.ts';
import { mapAll } from '../map-all.ts';
import { type FoundSummary, findSummary, makeSummary } from './lesson-summaries.ts';
import type { SummaryPlace } from './summary-source.ts';

/** One lesson, with what is kept of its figures. */
export interface GatheredLesson extends FoundSummary {
  readonly place: SummaryPlace;
}

/** Reads what is kept of many lessons' figures; grades nothing. In the order of the places. */
export function gatherSummaries(places: readonly SummaryPlace[]): Promise<readonly GatheredLesson[]> {
  return mapAll(places, async (place) => ({ place, ...(await findSummary(place)) }));
}

/** Lessons brought up to date; those that could not be graded, and those whose figures could not be kept. */
export interface RefreshedSummaries {
  readonly summaries: readonly LessonSummary[];
  readonly problems: readonly LookBackProblem[];
}

/**
 * Grades, one after another, the lessons whose figures are not up to date, and keeps what comes of it: stopped midway,
 * it goes on where it was. A lesson that cannot be opened is named; what is kept of it stands.
 */
export async function refreshSummaries(
  lessons: readonly GatheredLesson[],
  job: Job,
): Promise<RefreshedSummaries> {
  const total = lessons.filter(({ state }) => state === 'stale').length;
  const summaries: LessonSummary[] = [];
  const problems: LookBackProblem[] = [];
  let done = 0;
  for (const { place, state, summary } of lessons) {
    const made = state === 'stale' ? await refresh(place, job) : { summary, problems: [] };
    job.signal.throwIfAborted();
    // What was kept before stands where nothing came of it.
    const shown = made.summary ?? summary;
    if (shown) summaries.push(shown);
    problems.push(...made.problems);
    if (state === 'stale') job.onProgress({ step: 'figures', done: ++done, total });
  }
  return { summaries, problems };
}

async function refresh(
  place: SummaryPlace,
  job: Job,
): Promise<Pick<GatheredLesson, 'summary'> & { readonly problems: readonly LookBackProblem[] }> {
  const made = await makeSummary(place, job);
  if (made.ok) return { summary: made.value, problems: made.problems };
  return { summary: null, problems: [describeLeftOut(place, made.problems)] };
}

function describeLeftOut({ folder }: SummaryPlace, [first]: readonly OpenProblem[]): LookBackProblem {
  return { code: 'lesson-left-out', path: folder, because: first ?? { code: 'lesson-without-plan' } };
}
