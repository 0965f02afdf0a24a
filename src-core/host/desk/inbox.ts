import { createHash, randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, rm, utimes } from 'node:fs/promises';
import path from 'node:path';
import { Writable } from 'node:stream';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { readFullHash } from '../content-hash.ts';
import { describeWriteError } from '../write-error.ts';

/** A file that a page has announced. */
export interface AnnouncedFile {
  readonly path: string;
  readonly sizeBytes: number;
  readonly modifiedMs: number | null;
}

/** Files on their way from a page, kept beside the lesson's clips until they are brought in. */
export interface Inbox {
  readonly token: string;
  readonly folder: string;
  readonly files: readonly AnnouncedFile[];
}

/** All inboxes of a desk. */
export interface Inboxes {
  /** Fails where a path could not be a file's in a folder. */
  readonly open: (clipsFolder: string, files: readonly AnnouncedFile[]) => Promise<Outcome<Inbox, Problem>>;
  readonly find: (token: string) => Inbox | null;
  /** Writes one file as it arrives: no more bytes than announced, read back and compared. */
  readonly receive: (
    inbox: Inbox,
    file: AnnouncedFile,
    bytes: ReadableStream<Uint8Array>,
  ) => Promise<Outcome<null, Problem>>;
  readonly close: (token: string) => Promise<void>;
  readonly closeAll: () => Promise<void>;
}

/** What no file system takes in a name, and what would lead out of a folder. */
const BAD_PART = /^\.{1,2}$|[\p{Cc}\\:*?"<>|]|^\s|[\s.]$|^$/u;

/** Whether a dropped path can be kept below a folder on any system. */
export function isPlainPath(given: string): boolean {
  const parts = given.split('/');
  return parts.length <= 12 && parts.every((part) => part.length <= 200 && !BAD_PART.test(part));
}

/** Inboxes lie below the folder of clips under a hidden name, on the disk that the clips go to. */
export function openInboxes(): Inboxes {
  const inboxes = new Map<string, Inbox>();
  const close = async (token: string) => {
    const inbox = inboxes.get(token);
    inboxes.delete(token);
    if (inbox) await rm(inbox.folder, { recursive: true, force: true }).catch(() => {});
  };
  return {
    open: async (clipsFolder, files) => {
      const bad = files.find((file) => !isPlainPath(file.path));
      if (bad) return fail({ code: 'file-name-bad', path: bad.path.slice(0, 200) });
      await sweep(clipsFolder, inboxes);
      const token = `i-${randomBytes(16).toString('hex')}`;
      const folder = path.join(clipsFolder, `.inbox-${token.slice(2, 10)}`);
      try {
        await mkdir(folder, { recursive: true });
      } catch (error) {
        return fail(describeWriteError(error, folder));
      }
      const inbox = { token, folder, files };
      inboxes.set(token, inbox);
      return succeed(inbox);
    },
    find: (token) => inboxes.get(token) ?? null,
    receive,
    close,
    closeAll: async () => {
      await Promise.all([...inboxes.keys()].map(close));
    },
  };
}

/** Takes away what a host that was killed left behind. */
async function sweep(clipsFolder: string, inboxes: ReadonlyMap<string, Inbox>): Promise<void> {
  const known = new Set([...inboxes.values()].map(({ folder }) => folder));
  const names = await readdir(clipsFolder).catch(() => []);
  const left = names
    .filter((name) => /^\.inbox-[0-9a-f]{8}$/.test(name))
    .map((name) => path.join(clipsFolder, name));
  for (const folder of left)
    if (!known.has(folder)) await rm(folder, { recursive: true, force: true }).catch(() => {});
}

async function receive(
  inbox: Inbox,
  announced: AnnouncedFile,
  bytes: ReadableStream<Uint8Array>,
): Promise<Outcome<null, Problem>> {
  const file = path.join(inbox.folder, ...announced.path.split('/'));
  const hash = createHash('sha256');
  let arrived = 0;
  const check = new TransformStream<Uint8Array, Uint8Array>({
    transform: (chunk, controller) => {
      arrived += chunk.byteLength;
      if (arrived > announced.sizeBytes) controller.error(new Error('more bytes than announced'));
      hash.update(chunk);
      controller.enqueue(chunk);
    },
  });
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await bytes.pipeThrough(check).pipeTo(Writable.toWeb(createWriteStream(file, { flush: true })));
    const isWhole =
      arrived === announced.sizeBytes && (await readFullHash(file)) === hash.digest('hex').slice(0, 32);
    if (!isWhole) throw new Error('not what was announced');
    if (announced.modifiedMs !== null) {
      const date = new Date(announced.modifiedMs);
      await utimes(file, date, date);
    }
    return succeed(null);
  } catch (error) {
    await rm(file, { force: true }).catch(() => {});
    const isDisk = (error as NodeJS.ErrnoException).syscall !== undefined;
    return fail(isDisk ? describeWriteError(error, file) : { code: 'upload-differs', path: announced.path });
  }
}
