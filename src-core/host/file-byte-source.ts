import { closeSync, constants, fstatSync, open, readSync } from 'node:fs';
import { promisify } from 'node:util';
import type { ByteSource } from '../media/byte-source.ts';

const openFile = promisify(open);

/**
 * Opened without following a link at the end of the path and without waiting for whatever is at the other end of a
 * pipe. Systems that lack these flags have no such files.
 */
const OPEN_FLAGS = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/**
 * Opens a file, hands its bytes to `use` in ranges, and closes it whatever happens. The read-ahead lies in the
 * core (`boundBytes`), so that each range asked here is one system call.
 *
 * The file is opened off the main thread, where a sleeping disk or a lost network folder may keep one waiting; its
 * few small ranges are then read at once, which costs a tenth of handing each to another thread and back.
 *
 * Rejects with the system's error, `code` and `syscall` set, where the file cannot be opened or read; `ELOOP` for a
 * link, `EISDIR` for a folder, `EINVAL` for a pipe, a socket or a device.
 */
export async function withFileBytes<Value>(
  filePath: string,
  use: (source: ByteSource) => Promise<Value>,
): Promise<Value> {
  const file = await openFile(filePath, OPEN_FLAGS);
  let isOpen = true;
  try {
    const stats = fstatSync(file);
    if (stats.isDirectory()) throw buildOpenError('EISDIR', filePath);
    if (!stats.isFile()) throw buildOpenError('EINVAL', filePath);
    return await use(buildSource(file, stats.size, () => isOpen));
  } finally {
    isOpen = false;
    closeSync(file);
  }
}

/** The system gives a closed file's number to the next file, which must not be read in its place. */
function buildSource(file: number, size: number, isOpen: () => boolean): ByteSource {
  return {
    size,
    async read(offset, length) {
      if (!isOpen()) throw new Error('this file was closed: its bytes are there inside withFileBytes only');
      const bytes = new Uint8Array(Math.max(0, Math.min(length, size - offset)));
      let filled = 0;
      while (filled < bytes.length) {
        const count = readSync(file, bytes, filled, bytes.length - filled, offset + filled);
        if (count === 0) return bytes.subarray(0, filled);
        filled += count;
      }
      return bytes;
    },
  };
}

function buildOpenError(code: 'EISDIR' | 'EINVAL', path: string): NodeJS.ErrnoException {
  return Object.assign(new Error(`${code}: not a regular file, open '${path}'`), {
    code,
    syscall: 'open',
    path,
  });
}
