import path from 'node:path';
import { KEEPING } from '../../../renderer/text/english/keeping.ts';
import type { OpenLesson } from '../../app/open-lesson.ts';
import { buildKeepingText, type HeldFile } from '../../app/retention.ts';
import { writeFileAtomically } from '../../host/atomic-write.ts';
import { KEEPING_FILE, readKeptUntil } from '../../host/keeping-files.ts';
import { listHoldings } from '../../host/lesson-holdings.ts';
import { getSchoolDay } from '../../host/school-day.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, PLAIN_NAMES, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `keep` as typed. */
export interface KeepOptions {
  /** Last day, `2025-07-31`. */
  readonly until?: string;
  readonly json?: boolean;
}

interface Kept {
  readonly folder: string;
  readonly until: string | null;
  readonly isOverdue: boolean;
  readonly isUnreadable: boolean;
  readonly files: readonly HeldFile[];
}

/** `keep <lessons…>`: how long lessons are kept and what they hold; with `--until`, sets the last day. */
export async function runKeep(
  folders: readonly string[],
  options: KeepOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const text = options.until === undefined ? null : buildKeepingText(options.until);
  if (options.until !== undefined && text === null) {
    terminal.say(`! ${KEEPING.notADay(options.until)}\n`);
    return 2;
  }
  const kept: Kept[] = [];
  for (const folder of folders) {
    const one = await keepOne(folder, text, terminal);
    if (!one) return 2;
    kept.push(one);
  }
  if (options.json)
    terminal.write(formatJson(kept.map(({ files, ...one }) => ({ ...one, ...addUp(files) }))));
  else terminal.write(kept.map((one) => `${describeKept(one)}\n`).join(''));
  if (kept.some(({ until }) => until === null)) terminal.say(`${KEEPING.setHint}\n`);
  return kept.some((one) => one.isOverdue || one.isUnreadable) ? 1 : 0;
}

/** Sets the day where there is one to set; says why, and gives null, where the lesson cannot be read or written. */
async function keepOne(folder: string, text: string | null, terminal: Terminal): Promise<Kept | null> {
  const open = await openFolder(folder, {}, terminal);
  if (!open) return null;
  if (text !== null) {
    const written = await writeFileAtomically(path.resolve(folder, KEEPING_FILE), text);
    if (!written.ok) {
      sayProblems(terminal, written.problems, PLAIN_NAMES);
      return null;
    }
  }
  return describeFolder(folder, open.lesson, open.ports.nowMs());
}

async function describeFolder(folder: string, { plan }: OpenLesson, nowMs: number): Promise<Kept> {
  const kept = await readKeptUntil(path.resolve(folder), getSchoolDay(plan.zone, nowMs));
  return { folder, ...kept, files: (await listHoldings(folder, 'all')).files };
}

function describeKept({ folder, until, isOverdue: isOver, isUnreadable, files }: Kept): string {
  const date = until === null ? KEEPING.noDate : isOver ? KEEPING.overdue(until) : KEEPING.until(until);
  const held = addUp(files);
  return `${folder}: ${isUnreadable ? KEEPING.unreadable : date}; ${KEEPING.holds(held.count, held.bytes)}`;
}

function addUp(files: readonly HeldFile[]): { readonly count: number; readonly bytes: number } {
  return { count: files.length, bytes: files.reduce((sum, { bytes }) => sum + bytes, 0) };
}
