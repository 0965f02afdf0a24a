import path from 'node:path';
import { FIGURE_WORDS, LOOK_BACK } from '../../../renderer/text/english/look-back.ts';
import { buildCsv, buildFigures, buildLookBack, listSections } from '../../app/look-back.ts';
import { findLessonFolders } from '../../host/find-lesson-folders.ts';
import { gatherSummaries, refreshSummaries } from '../../host/look-back/gather-summaries.ts';
import type { LessonSummary } from '../../marking/look-back/lesson-summary.ts';
import { formatLookBack } from '../look-back-text.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `look-back` as typed. */
export interface LookBackOptions {
  readonly class?: string;
  readonly school?: string;
  readonly json?: boolean;
  readonly csv?: boolean;
}

/** `look-back <folders…>`: sections across lessons, from figures kept with each; lessons that changed are graded. */
export async function runLookBack(
  given: readonly string[],
  options: LookBackOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const folders = await findLessonFolders(given);
  if (folders.length === 0) {
    sayProblems(terminal, [{ code: 'no-lessons-found', paths: given }], PLAIN_NAMES);
    return 2;
  }
  const places = folders.map((folder) => ({ folder, clipsFolder: path.join(folder, 'clips') }));
  const gathered = await gatherSummaries(places);
  const { summaries, problems } = await refreshSummaries(gathered, terminal.job);
  const sections = listSections(summaries.filter((one) => isWanted(one, options)));
  if (options.csv) terminal.write(buildCsv(buildFigures(sections, FIGURE_WORDS)).text);
  else if (options.json) {
    const told = problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES));
    terminal.write(formatJson({ sections: sections.map(describeAsData), problems: told }));
  } else terminal.write(sections.map((section) => formatLookBack(buildLookBack(section))).join('\n'));
  if (!options.json) sayProblems(terminal, problems, PLAIN_NAMES);
  const gone = gathered.filter(({ state }) => state === 'films-gone').length;
  if (gone > 0) terminal.say(`${LOOK_BACK.filmsGone(gone)}\n`);
  const unseen = summaries.filter((one) => one.unseen > 0).length;
  if (unseen > 0) terminal.say(`${LOOK_BACK.unseen(unseen)}\n`);
  return problems.length + unseen > 0 ? 1 : 0;
}

function isWanted({ lesson }: LessonSummary, { class: className, school }: LookBackOptions): boolean {
  return (
    (className === undefined || lesson.className === className) &&
    (school === undefined || lesson.school === school)
  );
}

/** The lessons by day instead of the summaries, which the CSV has in full. */
function describeAsData(section: Parameters<typeof buildLookBack>[0]): object {
  const { section: _, ...rest } = buildLookBack(section);
  const lessons = section.lessons.map(({ lesson, clips }) => ({ ...lesson, clips }));
  return { school: section.school, className: section.className, lessons, ...rest };
}
