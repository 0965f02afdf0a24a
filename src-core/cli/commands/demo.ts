import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { type BuildOptions, buildDemoLesson } from '../../../fixtures/build-demo-lesson.ts';
import { buildTeacherActs } from '../../../fixtures/harbour/teacher-acts.ts';
import { count } from '../../../renderer/text/english/amounts.ts';
import { findClip } from '../../app/find-clip.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { markLesson } from '../../app/mark-lesson.ts';
import { openLesson } from '../../app/open-lesson.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { buildGradeJson } from '../grade-json.ts';
import { formatGrade, formatSquadPoints, isOpen } from '../grade-text.ts';
import { toOneLine } from '../one-line.ts';
import { type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';
import { runExport } from './export.ts';

/** The options of `demo` as typed. */
export interface DemoOptions {
  readonly into: string;
  readonly json?: boolean;
}

/**
 * `demo`: films the demo lesson, grades it, hands it in as it stands, decides as its teacher does, and hands it in
 * for good. Every step is the one that a real lesson takes.
 */
export async function runDemo({ into, json }: DemoOptions, terminal: Terminal): Promise<ExitCode> {
  const write = json ? () => {} : terminal.write;
  const onProgress = ({ done, total }: { readonly done: number; readonly total: number }) =>
    terminal.job.onProgress({ step: 'film', done, total });
  const built = await build(into, terminal, onProgress);
  if (!built) return 2;
  for (const note of built.notes) terminal.say(`! ${note}\n`);
  write(`${count(built.films, 'film')} in ${into}, ${built.made} made now.\n\n`);
  const open = await openFolder(into, {}, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  write(`${formatGrade(graded, getLessonNames(graded))}\n`);
  const handIn = path.join(into, 'hand-in');
  await mkdir(handIn, { recursive: true });
  const quiet = { ...terminal, write };
  const sheet = { to: 'csv', withOpenFlags: true, replace: true, by: 'demo teacher' };
  await runExport(into, { ...sheet, out: path.join(handIn, 'before.csv') }, quiet);
  const decided = await decide(open, graded, terminal);
  if (!decided) return 2;
  write(`The teacher decides: ${count(decided.recorded, 'decision')} recorded.\n`);
  write(formatSquadPoints(decided.after));
  await runExport(into, { ...sheet, out: path.join(handIn, 'final.csv') }, quiet);
  if (json) terminal.write(formatJson(buildGradeJson(decided.after, [], getLessonNames(decided.after))));
  return decided.after.flags.some(isOpen) ? 1 : 0;
}

/** Says why, and gives null, where the demo cannot be built: no ffmpeg, or something else stands in the folder. */
async function build(into: string, terminal: Terminal, onProgress: BuildOptions['onProgress']) {
  try {
    const { signal } = terminal;
    return await buildDemoLesson(into, { signal, replace: true, ...(onProgress && { onProgress }) });
  } catch (error) {
    if (terminal.signal.aborted || !(error instanceof Error)) throw error;
    terminal.say(`! ${toOneLine(error.message)}\n`);
    return null;
  }
}

async function decide(
  open: OpenFolder,
  graded: GradedLesson,
  terminal: Terminal,
): Promise<{ readonly after: GradedLesson; readonly recorded: number } | null> {
  const names = getLessonNames(graded);
  const findClipId = (file: string) => findClip(graded, file)?.id ?? null;
  const acts = buildTeacherActs({
    findClipId,
    findFlagKey: ({ code, squad, file, slot }) => {
      const clip = file === null ? null : findClipId(file);
      const found = graded.flags.find(
        ({ flag }) =>
          flag.code === code &&
          flag.squad === squad &&
          flag.clip === clip &&
          (clip !== null || !('slot' in flag) || flag.slot === slot),
      );
      return found?.key ?? null;
    },
  });
  const marked = await markLesson(open.ports, acts, 'demo teacher');
  sayProblems(terminal, marked.problems, names);
  const lesson = marked.ok ? await openLesson(open.ports) : null;
  if (!marked.ok || !lesson?.ok) return null;
  const after = await gradeLesson(open.ports, lesson.value, terminal.job);
  return { after, recorded: marked.value.length };
}
