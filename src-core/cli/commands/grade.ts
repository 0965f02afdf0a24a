import { gradeLesson } from '../../app/grade-lesson.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { buildGradeJson } from '../grade-json.ts';
import { formatGrade, isOpen } from '../grade-text.ts';
import { type LessonOptions, openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `grade <lesson>`: from the folder of clips to proposals, flags and points under every order rule. */
export async function runGrade(
  folder: string,
  options: LessonOptions & { readonly watch?: boolean },
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job, {
    watch: options.watch ? 'all' : 'none',
  });
  const names = getLessonNames(graded);
  const problems = [...open.problems, ...graded.problems];
  if (options.json) terminal.write(formatJson(buildGradeJson(graded, problems, names)));
  else {
    terminal.write(formatGrade(graded, names));
    sayProblems(terminal, problems, names);
  }
  return graded.flags.some(isOpen) ? 1 : getExitCode(problems, names);
}
