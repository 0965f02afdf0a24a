import { open } from 'node:fs/promises';

/**
 * Makes new and renamed names in a folder survive a power cut. Where the system cannot sync a folder (Windows, some
 * network shares), its own order of writing has to do.
 */
export async function syncFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EPERM' && code !== 'EISDIR' && code !== 'EINVAL' && code !== 'EACCES') throw error;
  }
}
