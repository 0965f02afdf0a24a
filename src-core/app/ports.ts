import type { CardReading } from '../evidence/card-vote.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { MediaProblem } from '../media/media-problem.ts';
import type { Outcome } from '../platform/outcome.ts';
import type { EpochMs } from '../platform/units.ts';

/** What stands in a folder of clips. */
export interface FolderListing {
  /** The scanned folder's own name. */
  readonly name: string;
  /** Every regular file that is not hidden, in natural order of path. */
  readonly files: readonly FoundFile[];
  readonly problems: readonly FolderProblem[];
}

/** How far a long piece of work has come. */
export interface Progress {
  readonly step: 'scan' | 'read' | 'cards' | 'copy' | 'film';
  readonly done: number;
  readonly total: number;
}

/** What every long piece of work is given: a way to be stopped and a way to be seen. */
export interface Job {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}
