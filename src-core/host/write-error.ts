import type { StorageProblem } from '../platform/storage-problem.ts';

const CODES: Readonly<Record<string, StorageProblem['code']>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  // A limit on file size, set for a process or by FAT: no more fits, as far as the teacher is concerned.
  EFBIG: 'disk-full',
  EACCES: 'not-writable',
  EPERM: 'not-writable',
  EROFS: 'not-writable',
  EBUSY: 'not-writable',
  ENOENT: 'folder-missing',
  ENOTDIR: 'folder-missing',
  EISDIR: 'is-a-folder',
  ENAMETOOLONG: 'name-too-long',
};

/** A failed file operation as a problem. Errors that are not the system's are bugs and are thrown again. */
export function describeWriteError(error: unknown, path: string): StorageProblem {
  const cause = error instanceof Error && 'code' in error ? String(error.code) : null;
  if (cause === null || !('syscall' in (error as object))) throw error;
  return { code: CODES[cause] ?? 'write-failed', path, cause };
}

/** The same for a read: what may not be opened is named as that, not as something that may not be written. */
export function describeReadError(error: unknown, path: string): StorageProblem {
  const problem = describeWriteError(error, path);
  return problem.code === 'not-writable' ? { ...problem, code: 'not-readable' } : problem;
}
