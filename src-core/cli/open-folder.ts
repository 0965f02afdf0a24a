import { type OpenLesson, openLesson } from '../app/open-lesson.ts';
import type { LessonPorts } from '../app/ports.ts';
import type { Problem } from '../contract/problem.ts';
import { type LessonPlace, openLessonPorts } from '../host/lesson-ports.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from './say.ts';
import type { Terminal } from './terminal.ts';

/** Options of every command that works on a lesson. */
export interface LessonOptions {
  readonly json?: boolean;
  /** Folder of clips, where they are read in place. */
  readonly clips?: string;
}

/** A lesson folder that could be opened, with what was odd about it. */
export interface OpenFolder {
  readonly ports: LessonPorts;
  readonly lesson: OpenLesson;
  readonly problems: readonly Problem[];
}

/** Opens a lesson folder; says why, and gives null, where that cannot be done. */
export async function openFolder(
  folder: string,
  options: LessonOptions & Pick<LessonPlace, 'analysis'>,
  terminal: Terminal,
): Promise<OpenFolder | null> {
  const ports = openLessonPorts({
    folder,
    signal: terminal.signal,
    ...(options.clips === undefined ? {} : { clipsFolder: options.clips }),
    ...(options.analysis && { analysis: options.analysis }),
  });
  const lesson = await openLesson(ports);
  if (lesson.ok) return { ports, lesson: lesson.value, problems: lesson.problems };
  sayProblems(terminal, lesson.problems, PLAIN_NAMES);
  if (options.json) {
    const problems = lesson.problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES));
    terminal.write(formatJson({ problems }));
  }
  return null;
}
