import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { ByteSource } from '../media/byte-source.ts';

/**
 * Opened without following a link at the end of the path and without waiting for whatever is at the other end of a
 * pipe. Systems that lack these flags have no such files.
 */
const OPEN_FLAGS = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/**
 * Opens a file, hands its bytes to `use` in ranges, and closes it whatever happens. The read-ahead lies in the
 * core (`boundBytes`), so that each range asked here is one system call.
 *
 * Rejects with the system's error, `code` and `syscall` set, where the file cannot be opened or read; `ELOOP` for a
 * link, `EISDIR` for a folder, `EINVAL` for a pipe, a socket or a device.
 */
export async function withFileBytes<Value>(
  filePath: string,
  use: (source: ByteSource) => Promise<Value>,
): Promise<Value> {
  const handle = await open(filePath, OPEN_FLAGS);
  try {
    const stats = await handle.stat();
    if (stats.isDirectory()) throw buildOpenError('EISDIR', filePath);
    if (!stats.isFile()) throw buildOpenError('EINVAL', filePath);
    return await use(buildSource(handle, stats.size));
  } finally {
    await handle.close();
  }
}

function buildSource(handle: FileHandle, size: number): ByteSource {
  return {
    size,
    async read(offset, length) {
      const bytes = new Uint8Array(Math.max(0, Math.min(length, size - offset)));
      let filled = 0;
      while (filled < bytes.length) {
        const { bytesRead } = await handle.read(bytes, filled, bytes.length - filled, offset + filled);
        if (bytesRead === 0) return bytes.subarray(0, filled);
        filled += bytesRead;
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
