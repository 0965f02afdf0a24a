/** Why the disk did not take what was to be written. What stood there before is still there. */
export type WriteProblem = {
  readonly code:
    | 'disk-full'
    | 'not-writable'
    | 'folder-missing'
    | 'is-a-folder'
    | 'name-too-long'
    | 'write-failed';
  readonly path: string;
  /** The system's own name for it, such as `ENOSPC`. */
  readonly cause: string;
};

const CODES: Readonly<Record<string, WriteProblem['code']>> = {
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
export function describeWriteError(error: unknown, path: string): WriteProblem {
  const cause = error instanceof Error && 'code' in error ? String(error.code) : null;
  if (cause === null || !('syscall' in (error as object))) throw error;
  return { code: CODES[cause] ?? 'write-failed', path, cause };
}
