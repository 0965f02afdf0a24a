import { ARCHIVE } from '../../../renderer/text/english/archive.ts';
import { type RestoredLesson, restoreArchive } from '../../host/archive/restore-archive.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `restore` as typed. */
export interface RestoreOptions {
  /** Of a damaged archive, restore what is whole. */
  readonly wholeFiles?: boolean;
  readonly json?: boolean;
}

/** `restore <archive> <folder>`: a lesson folder of an archive, every file checked before the folder appears. */
export async function runRestore(
  [file, folder]: readonly [string, string],
  options: RestoreOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const restored = await restoreArchive(
    { file, folder, onlyWhole: options.wholeFiles ?? false },
    { signal: terminal.signal, onProgress: terminal.job.onProgress },
  );
  if (options.json) terminal.write(formatJson(describeAsData(restored)));
  else {
    sayProblems(terminal, restored.problems, PLAIN_NAMES);
    if (restored.ok) terminal.write(describe(restored.value, restored.problems.length === 0));
  }
  if (!restored.ok) return 2;
  return restored.problems.length > 0 ? 1 : 0;
}

type Restored = Awaited<ReturnType<typeof restoreArchive>>;

function describeAsData(restored: Restored): object {
  const problems = restored.problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES));
  if (!restored.ok) return { lesson: null, made: null, files: 0, problems };
  const { manifest, files } = restored.value;
  return { lesson: manifest.lesson, made: manifest.made, files, problems };
}

function describe({ manifest: { lesson }, files }: RestoredLesson, isWhole: boolean): string {
  const say = isWhole ? ARCHIVE.restored : ARCHIVE.restoredInPart;
  return `${say(lesson.title, lesson.className, files)}\n`;
}
