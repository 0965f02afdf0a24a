import { type FileHandle, open, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { OverwrittenProblem, StorageProblem } from '../platform/storage-problem.ts';
import { syncFolder } from './sync-folder.ts';
import { describeReadError, describeWriteError } from './write-error.ts';

// One journal, several writers (the window and the command line at once), and a kill or a power cut at any moment.
// No lock file: a killed holder leaves it behind, and telling a stale lock from a live one can never be quite safe.
// Instead nothing is ever removed from the file, so that there is nothing to guard:
// - a line goes out in a single append, which the system keeps whole among other appends;
// - a torn last line is closed off with a line end by the next append and stays where it is, readable and reported;
// - after the sync the lines are read back, so that what is acknowledged is in the file, whoever wrote beside us.
// The file is opened anew for each append: a sync program may have put another file in its place meanwhile.

/** Why decisions were not taken into the journal. */
export type JournalStoreProblem = StorageProblem | OverwrittenProblem;

/** A journal on disk as lines; what the lines mean is for the lesson file to say. */
export interface JournalStore {
  readonly path: string;
  /** The whole text; empty where there is no file yet. A torn last line is part of it. */
  readonly read: () => Promise<Outcome<string, StorageProblem>>;
  /**
   * Adds lines, given without line ends. When it succeeds they are on the disk; the value is the lines that others
   * have added since the last read or append. When it fails none is acknowledged, and appending again is safe: a
   * reader takes each event once.
   */
  readonly append: (lines: readonly string[]) => Promise<Outcome<readonly string[], JournalStoreProblem>>;
}

/** How often an append is tried again when another writer's torn line has swallowed it. */
const ATTEMPTS = 3;

const LINE_END = 0x0a;

/** A journal at a path; `header` is the first line of a new one. Nothing is touched before the first append. */
export function openJournalStore(file: string, header: string): JournalStore {
  const store: Store = { file, header, knownBytes: 0 };
  let queue: Promise<unknown> = Promise.resolve();
  const inTurn = <Value>(work: () => Promise<Value>): Promise<Value> => {
    const turn = queue.then(work, work);
    queue = turn.catch(() => {});
    return turn;
  };
  return {
    path: file,
    read: () => inTurn(() => readAll(store)),
    append: (lines) => inTurn(() => appendLines(store, lines)),
  };
}

interface Store {
  readonly file: string;
  readonly header: string;
  /** How much of the file the caller has seen, up to a line's end. */
  knownBytes: number;
}

async function readAll(store: Store): Promise<Outcome<string, StorageProblem>> {
  try {
    const bytes = await readFile(store.file);
    store.knownBytes = bytes.lastIndexOf(LINE_END) + 1;
    return succeed(bytes.toString('utf8'));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return succeed('');
    return fail(describeReadError(error, store.file));
  }
}

async function appendLines(
  store: Store,
  lines: readonly string[],
): Promise<Outcome<readonly string[], JournalStoreProblem>> {
  if (lines.length === 0) return succeed([]);
  const others: string[] = [];
  try {
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      const found = await appendOnce(store, lines);
      others.push(...found.filter((line) => !lines.includes(line)));
      if (lines.every((line) => found.includes(line))) return succeed(others);
    }
    return fail({ code: 'journal-overwritten', path: store.file });
  } catch (error) {
    return fail(describeWriteError(error, store.file));
  }
}

/** Appends, syncs and reads back: every whole line since what was known. */
async function appendOnce(store: Store, lines: readonly string[]): Promise<readonly string[]> {
  const handle = await open(store.file, 'a+');
  try {
    const before = (await handle.stat()).size;
    if (before < store.knownBytes) store.knownBytes = 0;
    const text = (await buildLead(handle, before, store.header)) + lines.map((line) => `${line}\n`).join('');
    await writeInOne(handle, Buffer.from(text, 'utf8'));
    await handle.sync();
    if (before === 0) await syncFolder(path.dirname(store.file));
    return await readNewLines(handle, store);
  } finally {
    await handle.close();
  }
}

/** What must stand before new lines: the header in a new file, a line end after a torn line, both after a torn header. */
async function buildLead(handle: FileHandle, size: number, header: string): Promise<string> {
  if (size === 0) return `${header}\n`;
  const head = await readBytes(handle, 0, Math.min(size, Buffer.byteLength(header) + 1));
  const lastByte = (await readBytes(handle, size - 1, size))[0];
  const lineEnd = lastByte === LINE_END ? '' : '\n';
  return head.includes(LINE_END) || lineEnd === '' ? lineEnd : `${lineEnd}${header}\n`;
}

/** One write, so that the system keeps it whole; a short one means that the disk is full. */
async function writeInOne(handle: FileHandle, bytes: Buffer): Promise<void> {
  const { bytesWritten } = await handle.write(bytes);
  if (bytesWritten === bytes.length) return;
  // Asking for the rest makes the system name the reason. Should there be room again by now, the line is broken
  // by whatever stands between all the same, and the reading back tells.
  await handle.write(bytes, bytesWritten);
}

async function readNewLines(handle: FileHandle, store: Store): Promise<readonly string[]> {
  const { size } = await handle.stat();
  const bytes = await readBytes(handle, store.knownBytes, size);
  const whole = bytes.subarray(0, bytes.lastIndexOf(LINE_END) + 1);
  store.knownBytes += whole.length;
  return whole
    .toString('utf8')
    .split('\n')
    .filter((line) => line !== '' && line !== store.header);
}

async function readBytes(handle: FileHandle, from: number, to: number): Promise<Buffer> {
  const bytes = Buffer.alloc(Math.max(0, to - from));
  let filled = 0;
  while (filled < bytes.length) {
    const { bytesRead } = await handle.read(bytes, filled, bytes.length - filled, from + filled);
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return bytes.subarray(0, filled);
}
