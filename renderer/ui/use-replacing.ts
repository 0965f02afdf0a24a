import { useState } from 'react';
import type { Problem } from '../../src-core/contract/problem.ts';

/** Whether what is to be written would take the place of a file. */
export interface Replacing {
  /** The latest try found a file at the very place that is meant now: the next may replace it, and no other. */
  readonly isThere: boolean;
  /** To be told what each try came to. */
  readonly note: (problems: readonly Problem[]) => void;
}

/** Asks before a file is replaced, anew for each `place`: a text that stands for folder and name. */
export function useReplacing(place: string): Replacing {
  const [foundAt, setFoundAt] = useState<string | null>(null);
  return {
    isThere: foundAt === place,
    note: (problems) => setFoundAt(problems.some(({ code }) => code === 'file-exists') ? place : null),
  };
}
