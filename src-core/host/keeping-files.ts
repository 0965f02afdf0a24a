import path from 'node:path';
import { type DeletionEntry, isOverdue, parseDeletionLog, parseKeeping } from '../app/retention.ts';
import { readTextIfThere } from './lesson-ports.ts';

/** The file that says how long a lesson is kept. */
export const KEEPING_FILE = 'keeping.json';

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
  const text = await readTextIfThere(path.join(folder, 'deletions.jsonl'));
  return text.ok && text.value !== null ? parseDeletionLog(text.value) : [];
}
