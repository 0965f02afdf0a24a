import { ARCHIVE } from '../../../renderer/text/english/archive.ts';
import { writeArchive } from '../../host/archive/write-archive.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `backup` as typed. */
export interface BackupOptions {
  readonly withoutClips?: boolean;
  readonly json?: boolean;
}

/** `backup <lesson> <archive>`: one archive of a lesson, read back and compared before it has its name. */
export async function runBackup(
  [folder, file]: readonly [string, string],
  options: BackupOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const { title, className, date } = open.lesson.plan.lesson;
  const written = await writeArchive(
    {
      folder,
      file,
      lesson: { title, className, date },
      withClips: !options.withoutClips,
      made: new Date(open.ports.nowMs()).toISOString(),
    },
    { signal: terminal.signal, onProgress: terminal.job.onProgress },
  );
  if (options.json) {
    const problems = written.problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES));
    terminal.write(formatJson({ ...(written.ok && written.value), problems }));
  } else {
    sayProblems(terminal, written.problems, PLAIN_NAMES);
    if (written.ok) {
      terminal.write(`${ARCHIVE.made(file, written.value.files, written.value.bytes)}\n`);
      terminal.say(`${written.value.holdsClips ? ARCHIVE.withClips : ARCHIVE.withoutClips}\n`);
    }
  }
  if (!written.ok) return 2;
  return written.problems.length > 0 ? 1 : 0;
}
