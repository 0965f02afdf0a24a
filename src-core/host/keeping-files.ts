import { open } from 'node:fs/promises';
import path from 'node:path';
import { type DeletionEntry, isOverdue, parseDeletionLog, parseKeeping } from '../app/retention.ts';
import type { LessonPart } from '../lesson-file/lesson-parts.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { readTextIfThere } from './lesson-ports.ts';
import { describeWriteError } from './write-error.ts';

/** The file that says how long a lesson is kept. */
export const KEEPING_FILE = 'keeping.json' satisfies LessonPart;

/** The file that says what was deleted, and outlives the lesson. */
const DELETION_LOG = 'deletions.jsonl' satisfies LessonPart;

/** What a lesson folder says of its last day. */
export interface KeptUntil {
  /** Null: none is set, or it cannot be read. */
  readonly until: string | null;
  readonly isOverdue: boolean;
  readonly isUnreadable: boolean;
}

/** Reads a lesson's last day; `today` is `2025-05-15`. */
export async function readKeptUntil(folder: string, today: string): Promise<KeptUntil> {
  const text = await readTextIfThere(path.join(folder, KEEPING_FILE));
  const written = text.ok ? text.value : null;
  const keeping = written === null ? null : parseKeeping(written);
  return {
    until: keeping?.until ?? null,
    isOverdue: keeping !== null && isOverdue(keeping, today),
    isUnreadable: !text.ok || (written !== null && keeping === null),
  };
}

/** What was deleted of a lesson, oldest first; empty where nothing was, or the log cannot be read. */
export async function readDeletionLog(folder: string): Promise<readonly DeletionEntry[]> {
  const text = await readTextIfThere(path.join(folder, DELETION_LOG));
  return text.ok && text.value !== null ? parseDeletionLog(text.value) : [];
}

/** Adds a line to the log; it is on the disk when this succeeds. A torn line before it is closed off. */
export async function logDeletion(
  folder: string,
  entry: DeletionEntry,
): Promise<Outcome<null, StorageProblem>> {
  const file = path.join(folder, DELETION_LOG);
  try {
    const before = await readTextIfThere(file);
    const isTorn = before.ok && before.value !== null && before.value !== '' && !before.value.endsWith('\n');
    const handle = await open(file, 'a');
    try {
      await handle.appendFile(`${isTorn ? '\n' : ''}${JSON.stringify(entry)}\n`);
      await handle.sync();
    } finally {
      await handle.close();
    }
    return succeed(null);
  } catch (error) {
    return fail(describeWriteError(error, DELETION_LOG));
  }
}
