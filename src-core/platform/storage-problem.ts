/** Why the disk did not take, or give, what was asked. What stood there before is still there. */
export interface StorageProblem {
  readonly code:
    | 'disk-full'
    | 'not-writable'
    | 'not-readable'
    | 'folder-missing'
    | 'is-a-folder'
    | 'name-too-long'
    | 'copy-differs'
    | 'write-failed';
  readonly path: string;
  /** The system's own name for it, such as `ENOSPC`. */
  readonly cause: string;
}

/** Written, but not found when read back: something else is writing over the file. */
export interface OverwrittenProblem {
  readonly code: 'journal-overwritten';
  readonly path: string;
}
