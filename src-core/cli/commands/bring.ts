import path from 'node:path';
import { count } from '../../../renderer/text/english/amounts.ts';
import { bringClips } from '../../app/bring-clips.ts';
import { listSources, openBringPorts } from '../../host/bring-ports.ts';
import { getPlanNames } from '../../host/lesson-names.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `bring <lesson> <folders…>`: copies clips into the lesson, compared, a folder per squad, each content once. */
export async function runBring(
  [folder, ...sources]: readonly [string, ...string[]],
  options: { readonly json?: boolean },
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const clipsFolder = path.join(folder, 'clips');
  const ports = await openBringPorts(clipsFolder, terminal.signal);
  const [present, listed] = [await open.ports.listClips(), await listSources(sources)];
  const { plan } = open.lesson;
  const brought = await bringClips(listed, present, { plan, ports, job: terminal.job });
  const names = getPlanNames(open.lesson);
  if (options.json) {
    const problems = brought.problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson({ ...brought, problems }));
  } else {
    const there = brought.alreadyThere === 0 ? '' : `, ${brought.alreadyThere} there already`;
    terminal.write(`${count(brought.copied.length, 'clip')} copied and checked${there}.\n`);
    sayProblems(terminal, brought.problems, names);
  }
  const isStuck = brought.copied.length + brought.alreadyThere === 0 && brought.problems.length > 0;
  return isStuck ? 2 : getExitCode(brought.problems, names);
}
