import { expect } from 'vitest';
import { describeProblem } from '../../renderer/text/english/problems.ts';
import type { Advice } from '../../renderer/text/names.ts';
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import type { GradedLesson } from '../../src-core/app/graded-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import { buildGradeJson } from '../../src-core/cli/grade-json.ts';
import { formatGrade } from '../../src-core/cli/grade-text.ts';
import { formatJson } from '../../src-core/cli/say.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { getLessonNames } from '../../src-core/host/lesson-names.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { getFileRole } from '../../src-core/intake/found-file.ts';

/** A lesson graded as the command line grades it, with all that it would say. */
export interface GradedFolder {
  readonly graded: GradedLesson;
  readonly text: string;
  readonly json: string;
  readonly problems: readonly Problem[];
  readonly advice: readonly Advice[];
}

/**
 * Grades a lesson folder and holds what every lesson must hold: it opens, every clip that lies there is accounted
 * for exactly once, and no sentence has a hole in it.
 */
export async function gradeFolder(folder: string, clipsFolder?: string): Promise<GradedFolder> {
  const { signal } = new AbortController();
  const ports = openLessonPorts({ folder, signal, ...(clipsFolder !== undefined && { clipsFolder }) });
  const lesson = await openLesson(ports);
  if (!lesson.ok) throw new Error(`does not open: ${JSON.stringify(lesson.problems)}`);
  const graded = await gradeLesson(ports, lesson.value, { signal, onProgress: () => {} });
  const names = getLessonNames(graded);
  const problems = [...lesson.problems, ...graded.problems];
  const advice = problems.map((problem) => describeProblem(problem, names));
  const text = formatGrade(graded, names);
  const json = formatJson(buildGradeJson(graded, problems, names));
  for (const said of [text, json, JSON.stringify(advice)]) {
    expect(said).not.toMatch(/undefined|\bNaN\b|\bInfinity\b|\[object/);
  }
  await expectEveryClip(graded, problems, (await ports.listClips()).files);
  return { graded, text, json, problems, advice };
}

async function expectEveryClip(
  graded: GradedLesson,
  problems: readonly Problem[],
  files: readonly { readonly path: string; readonly name: string }[],
): Promise<void> {
  const placed = [...graded.squads.flatMap(({ clips }) => clips), ...graded.aside];
  const paths = placed.flatMap(({ reading }) => reading.copies.map(({ file }) => file.path));
  const waiting = problems.flatMap((problem) =>
    problem.code === 'clip-of-nobody' || problem.code === 'file-unreadable' ? [problem.path] : [],
  );
  const clips = files.filter(({ name }) => getFileRole(name) === 'clip').map(({ path }) => path);
  expect([...paths, ...waiting].sort()).toEqual([...clips].sort());
}
