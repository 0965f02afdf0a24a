import type { DeskClient, RequestOptions } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { fail, type Outcome, succeed } from '../../src-core/platform/outcome.ts';

/** A file that the teacher dropped or chose, with its path as dropped: `Teal/IMG_0012.MOV`. */
export interface DroppedFile {
  readonly path: string;
  readonly file: File;
}

/** How many files are on their way at once: a browser allows few connections to one place. */
const AT_ONCE = 2;

/** The files of a drop, folders entered. Must be called within the drop's own event; hidden files are left out. */
export async function readDroppedFiles(transfer: DataTransfer): Promise<readonly DroppedFile[]> {
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  const lists = await Promise.all(entries.map((entry) => readEntry(entry, '')));
  return lists.flat();
}

async function readEntry(entry: FileSystemEntry, folder: string): Promise<DroppedFile[]> {
  if (entry.name.startsWith('.')) return [];
  const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) =>
      (entry as FileSystemFileEntry).file(resolve, reject),
    );
    return [{ path, file }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const found: DroppedFile[] = [];
  for (;;) {
    // A folder is told in portions; an empty one is the last.
    const portion = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (portion.length === 0) return found;
    for (const child of portion) found.push(...(await readEntry(child, path)));
  }
}

/**
 * Sends dropped files to the lesson's inbox, each checked on arrival. The value is the inbox, for `bringClips`. On a
 * failure, or when stopped, what was sent is thrown away.
 */
export async function sendFiles(
  client: DeskClient,
  lesson: LessonId,
  files: readonly DroppedFile[],
  options: RequestOptions = {},
): Promise<Outcome<string, Problem>> {
  const opened = await client.request('openInbox', {
    lesson,
    files: files.map(({ path, file }) => ({ path, sizeBytes: file.size, modifiedMs: file.lastModified })),
  });
  if (!opened.ok) return opened;
  const { inbox, uploads } = opened.value;
  const total = files.length;
  const totalBytes = files.reduce((sum, { file }) => sum + file.size, 0);
  let [done, doneBytes] = [0, 0];
  const waiting = uploads.map(({ url }, at) => ({ url, dropped: files[at] }));
  const problems: Problem[] = [];
  const work = async () => {
    for (let next = waiting.shift(); next?.dropped; next = waiting.shift()) {
      const { url, dropped } = next;
      const problem = options.signal?.aborted ? CANCELLED : await sendFile(url, dropped);
      if (problem) {
        problems.push(problem);
        return;
      }
      [done, doneBytes] = [done + 1, doneBytes + dropped.file.size];
      options.onProgress?.({ step: 'copy', done, total, doneBytes, totalBytes }, null);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  const [problem] = problems;
  if (!problem) return succeed(inbox);
  await client.request('closeInbox', { inbox });
  return fail(problem);
}

const CANCELLED: Problem = { code: 'call-cancelled' };

async function sendFile(url: string, { path, file }: DroppedFile): Promise<Problem | null> {
  try {
    const reply = await fetch(url, { method: 'PUT', body: file });
    return reply.ok ? null : { code: 'upload-differs', path };
  } catch {
    return { code: 'desk-unreachable' };
  }
}
