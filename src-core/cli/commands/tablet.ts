import path from 'node:path';
import { KEEPING } from '../../../renderer/text/english/keeping.ts';
import { compareTablet, type TabletComparison } from '../../host/compare-tablet.ts';
import { toOneLine } from '../one-line.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, PLAIN_NAMES, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `tablet <lesson> <folder>`: what of a tablet is verified in the lesson and may be deleted there. Deletes nothing. */
export async function runTablet(
  [folder, tablet]: readonly [lesson: string, tablet: string],
  options: { readonly json?: boolean },
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, {}, terminal);
  if (!open) return 2;
  const found = await compareTablet(path.resolve(tablet), path.resolve(folder, 'clips'), terminal);
  if (options.json) terminal.write(formatJson(found));
  else {
    describe(found, terminal);
    sayProblems(terminal, found.problems, PLAIN_NAMES);
  }
  return found.missing.length > 0 || found.problems.length > 0 ? 1 : 0;
}

function describe({ safe, missing }: TabletComparison, terminal: Terminal): void {
  const bytes = safe.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0);
  for (const file of safe) terminal.write(`${toOneLine(file.path)}\n`);
  terminal.say(`${KEEPING.safe(safe.length, bytes)}\n`);
  if (missing.length > 0) terminal.say(`${KEEPING.keep(missing.length)}\n`);
  for (const file of missing) terminal.say(`  ${toOneLine(file.path)}\n`);
  if (missing.length === 0 && safe.length > 0) terminal.say(`${KEEPING.allSafe}\n`);
}
