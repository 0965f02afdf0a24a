import path from 'node:path';
import { KEEPING } from '../../../renderer/text/english/keeping.ts';
import type { HoldingScope, Holdings } from '../../app/retention.ts';
import { isLessonFolder } from '../../host/desk/lesson-folder.ts';
import { readDeletionLog } from '../../host/keeping-files.ts';
import { deleteHoldings, listHoldings } from '../../host/lesson-holdings.ts';
import { gatherSummaries, refreshSummaries } from '../../host/look-back/gather-summaries.ts';
import { toOneLine } from '../one-line.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, PLAIN_NAMES, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `delete` as typed. */
export interface DeleteOptions {
  readonly films?: boolean;
  readonly all?: boolean;
  /** The code that was shown with the list. */
  readonly confirm?: string;
  readonly by: string;
  readonly json?: boolean;
}

/** `delete <lesson>`: shows what would go; deletes it once the code that came with the list is given back. */
export async function runDelete(
  folder: string,
  options: DeleteOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (options.films === options.all) {
    terminal.say(`! ${KEEPING.oneScope}\n`);
    return 2;
  }
  const scope = options.all ? 'all' : 'films';
  // Everything can go of a lesson that does not open, too: what is left of it still has names in it.
  if (scope === 'films' || !(await isLesson(folder))) {
    if (!(await openFolder(folder, {}, terminal))) return 2;
  }
  const { code } = await listHoldings(folder, scope);
  if (options.confirm !== undefined && options.confirm !== code) {
    terminal.say(`! ${KEEPING.changed}\n`);
    return 2;
  }
  if (scope === 'films') await addUpFigures(folder, terminal);
  const holdings = await listHoldings(folder, scope);
  return options.confirm === undefined
    ? show(scope, holdings, { options, terminal })
    : letGo({ folder, scope, holdings }, options, terminal);
}

async function letGo(
  what: { readonly folder: string; readonly scope: HoldingScope; readonly holdings: Holdings },
  options: DeleteOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { folder, scope, holdings } = what;
  const stamp = { who: options.by, at: new Date().toISOString() };
  const deletion = await deleteHoldings(folder, { scope, holdings, stamp });
  if (options.json) terminal.write(formatJson(deletion));
  else terminal.write(`${KEEPING.deleted(deletion.files, deletion.bytes)}\n${KEEPING.elsewhere}\n`);
  sayProblems(terminal, deletion.problems, PLAIN_NAMES);
  return deletion.problems.length > 0 ? 1 : 0;
}

/** What cannot be graded any more without its films is added up before they go, and before they are listed. */
async function addUpFigures(folder: string, terminal: Terminal): Promise<void> {
  const place = { folder, clipsFolder: path.join(folder, 'clips') };
  const kept = await refreshSummaries(await gatherSummaries([place]), terminal.job);
  sayProblems(terminal, kept.problems, PLAIN_NAMES);
}

/** Whether a lesson stands there, or what a deletion that was cut off has left of one. */
async function isLesson(folder: string): Promise<boolean> {
  return isLessonFolder(folder) || (await readDeletionLog(folder)).length > 0;
}

function show(
  scope: HoldingScope,
  holdings: Holdings,
  { options, terminal }: { readonly options: DeleteOptions; readonly terminal: Terminal },
): ExitCode {
  if (options.json) {
    terminal.write(formatJson(holdings));
    return 0;
  }
  const { files, leftAlone, code } = holdings;
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  for (const file of files) terminal.write(`${toOneLine(file.path)}\n`);
  if (leftAlone.length > 0) terminal.say(`${KEEPING.leftAlone(leftAlone)}\n`);
  if (files.length === 0) terminal.say(`${KEEPING.nothing}\n`);
  else {
    const what = KEEPING.wouldGo(KEEPING.scopes[scope], files.length, bytes);
    const caution = scope === 'films' ? `${KEEPING.noMarksAfter}\n` : '';
    terminal.say(`${what}\n${caution}${KEEPING.elsewhere}\n${KEEPING.confirm(code)}\n`);
  }
  return 0;
}
