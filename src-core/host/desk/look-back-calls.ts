import { existsSync } from 'node:fs';
import path from 'node:path';
import { FIGURE_WORDS } from '../../../renderer/text/english/look-back.ts';
import { buildCsv, buildFigures, listSections } from '../../app/look-back.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { LookBackProblem } from '../../contract/problem.ts';
import type { LessonSummary } from '../../marking/look-back/lesson-summary.ts';
import { fail, succeed } from '../../platform/outcome.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { findLessonFolders } from '../find-lesson-folders.ts';
import { type GatheredLesson, gatherSummaries, refreshSummaries } from '../look-back/gather-summaries.ts';
import { toPlainName } from '../plain-name.ts';
import type { DeskParts } from './desk-parts.ts';
import type { CallContext } from './face.ts';

/** Lessons beside the ones opened before; no further below, for they may lie in a home folder. */
const BESIDE = 1;

/** The calls that look back on many lessons. */
export function buildLookBackCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'readLookBack' | 'refreshLookBack' | 'writeFigures'> {
  return {
    readLookBack: async ({ folder }) => {
      const looked = await look(desk, folder);
      if (!looked) return fail({ code: 'folder-unknown' });
      return succeed(describe(looked, listKept(looked.lessons), []));
    },
    refreshLookBack: async ({ folder }, context) => {
      const looked = await look(desk, folder);
      if (!looked) return fail({ code: 'folder-unknown' });
      const { summaries, problems } = await refreshSummaries(looked.lessons, context);
      return succeed({ ...describe(looked, summaries, problems), stale: problems.length });
    },
    writeFigures: async ({ folder, school, className, replace }) => {
      const looked = await look(desk, folder);
      if (!looked) return fail({ code: 'folder-unknown' });
      const section = listSections(listKept(looked.lessons)).find(
        (one) => one.school === school && one.className === className,
      );
      const into = folder === null ? findHome(looked.lessons, { school, className }) : looked.paths[0];
      if (!section || into === undefined) return fail({ code: 'no-lessons-found', paths: [...looked.paths] });
      const file = path.join(into, `look back ${toPlainName(className)}.csv`);
      if (existsSync(file) && !replace) return fail({ code: 'file-exists', path: file });
      const written = await writeFileAtomically(file, buildCsv(buildFigures([section], FIGURE_WORDS)).text);
      return written.ok ? succeed({ path: file }) : written;
    },
  };
}

interface Looked {
  readonly paths: readonly string[];
  readonly lessons: readonly GatheredLesson[];
}

/** Null: no such folder. */
async function look(desk: DeskParts, token: string | null): Promise<Looked | null> {
  const known = desk.record.get().lessons;
  const chosen = token === null ? null : desk.tokens.find(token);
  if (token !== null && chosen === null) return null;
  const paths = chosen === null ? [...new Set(known.map((lesson) => path.dirname(lesson.path)))] : [chosen];
  const folders = await findLessonFolders(paths, ...(chosen === null ? [BESIDE] : []));
  const places = folders.map((folder) => ({
    folder,
    clipsFolder: known.find((lesson) => lesson.path === folder)?.clipsPath ?? path.join(folder, 'clips'),
  }));
  return { paths, lessons: await gatherSummaries(places) };
}

/** The folder that the class's latest lesson lies in. */
function findHome(
  lessons: readonly GatheredLesson[],
  { school, className }: Pick<LessonSummary['lesson'], 'school' | 'className'>,
): string | undefined {
  const own = lessons.flatMap(({ place, summary }) => {
    const isOwn = summary?.lesson.school === school && summary.lesson.className === className;
    return isOwn ? [{ folder: place.folder, date: summary.lesson.date }] : [];
  });
  const [latest] = own.sort((one, other) => other.date.localeCompare(one.date));
  return latest && path.dirname(latest.folder);
}

function listKept(lessons: readonly GatheredLesson[]): readonly LessonSummary[] {
  return lessons.flatMap(({ summary }) => (summary ? [summary] : []));
}

function describe(
  { paths, lessons }: Looked,
  summaries: readonly LessonSummary[],
  problems: readonly LookBackProblem[],
) {
  return {
    summaries,
    paths: [...paths],
    stale: lessons.filter(({ state }) => state === 'stale').length,
    filmsGone: lessons.flatMap(({ state, summary }) => {
      return state === 'films-gone' && summary ? [summaries.indexOf(summary)] : [];
    }),
    problems,
  };
}
