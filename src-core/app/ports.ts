import type { Progress } from '../contract/progress.ts';
import type { CardSearchProblem } from '../evidence/card-search-problem.ts';
import type { CardReading } from '../evidence/card-vote.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { MediaProblem } from '../media/media-problem.ts';
import type { Outcome } from '../platform/outcome.ts';
import type { OverwrittenProblem, StorageProblem } from '../platform/storage-problem.ts';
import type { EpochMs } from '../platform/units.ts';

export { JOURNAL_HEADER } from '../lesson-file/journal-file.ts';

/** What stands in a folder of clips. */
export interface FolderListing {
  /** The scanned folder's own name. */
  readonly name: string;
  /** Every regular file that is not hidden, in natural order of path. */
  readonly files: readonly FoundFile[];
  readonly problems: readonly FolderProblem[];
}

/** The wish to stop; the platform's own AbortSignal is one. */
export interface StopSignal {
  readonly aborted: boolean;
  /** Throws the reason where the work is to stop. */
  readonly throwIfAborted: () => void;
}

/** What every long piece of work is given: a way to be stopped and a way to be seen. */
export interface Job {
  readonly signal: StopSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** What one opening of a file gives. */
export interface FileReading {
  readonly media: Outcome<MediaFacts, MediaProblem>;
  /** Quick fingerprint of the content; see `host/content-hash.ts`. */
  readonly sampleHash: string;
}

/** The codes read in one clip, and what went wrong while looking. */
export interface CardsReading {
  readonly readings: readonly CardReading[];
  readonly problems: readonly CardSearchProblem[];
}

/** One lesson's folder, as the app sees it. Paths are relative to the folder of clips. */
export interface LessonPorts {
  /** The file's text, or null where there is none. */
  readonly readText: (name: 'plan.json' | 'roster.csv') => Promise<Outcome<string | null, StorageProblem>>;
  readonly listClips: () => Promise<FolderListing>;
  /** Null where the file cannot be opened. */
  readonly readFile: (path: string) => Promise<FileReading | null>;
  /** Null where the file cannot be read to its end. */
  readonly readFullHash: (path: string) => Promise<string | null>;
  /** Looks for codes; answers from the evidence cache where this content was looked at before. */
  readonly readCards: (path: string, contentId: string) => Promise<CardsReading>;
  /** The journal's whole text; empty where there is none yet. */
  readonly readJournal: () => Promise<Outcome<string, StorageProblem>>;
  /** Resolves once the lines are safe on disk; the value is what others have added meanwhile. */
  readonly appendToJournal: (
    lines: readonly string[],
  ) => Promise<Outcome<readonly string[], StorageProblem | OverwrittenProblem>>;
  /** Works through many items, as many at once as the machine does well; results in the order of the items. */
  readonly mapAll: <Item, Result>(
    items: readonly Item[],
    work: (item: Item) => Promise<Result>,
  ) => Promise<readonly Result[]>;
  readonly nowMs: () => EpochMs;
  /** A new ULID. */
  readonly newId: () => string;
}
