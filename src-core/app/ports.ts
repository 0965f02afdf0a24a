import type { Progress } from '../contract/progress.ts';
import type { CardReading } from '../evidence/card-vote.ts';
import type { ClipLook } from '../evidence/clip-look.ts';
import type { ClipMovement, MovementOptions } from '../evidence/clip-movement.ts';
import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { MotionPrint } from '../evidence/motion-print.ts';
import type { StripStill } from '../evidence/strip.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { MediaProblem } from '../media/media-problem.ts';
import type { Outcome } from '../platform/outcome.ts';
import type { OverwrittenProblem, StorageProblem } from '../platform/storage-problem.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';
import type { ClipReading } from './clip-reading.ts';

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
  /** Told each time more is known of the clips, with the way to get them as far as they are read by then. */
  readonly onClips?: (getClips: () => readonly ClipReading[]) => void;
}

/** What one opening of a file gives. */
export interface FileReading {
  readonly media: Outcome<MediaFacts, MediaProblem>;
  /** Quick fingerprint of the content; see `host/content-hash.ts`. */
  readonly sampleHash: string;
}

/** What a few pictures of one clip give: its codes and its look, and what went wrong while looking. */
export interface LookReading {
  readonly readings: readonly CardReading[];
  /** Null: not one picture was decoded. */
  readonly look: ClipLook | null;
  readonly problems: readonly EvidenceProblem[];
}

/** A picture of a clip's strip, ready to be shown. */
export interface StripPicture extends StripStill {
  /** When the picture was shown in the clip: the nearest that is kept to the moment wanted. */
  readonly shownSeconds: Seconds;
  /** A JPEG file, its longer side 224 pixels at most. */
  readonly jpeg: Uint8Array;
}

/** What watching one clip whole gives, beside what it leaves in the evidence cache. */
export interface WatchReading {
  readonly print: MotionPrint;
  readonly problems: readonly EvidenceProblem[];
}

/** Who waits for a clip to be watched: whoever asked for it, the teacher who has it open, or nobody in particular. */
export type WatchUrgency = 'asked' | 'opened' | 'background';

/** One lesson's folder, as the app sees it. Paths are relative to the folder of clips. */
export interface LessonPorts {
  /** The file's text, or null where there is none. */
  readonly readText: (
    name: 'plan.json' | 'roster.csv' | 'deletions.jsonl',
  ) => Promise<Outcome<string | null, StorageProblem>>;
  readonly listClips: () => Promise<FolderListing>;
  /** Null where the file cannot be opened. */
  readonly readFile: (path: string) => Promise<FileReading | null>;
  /** Null where the file cannot be read to its end. */
  readonly readFullHash: (path: string) => Promise<string | null>;
  /**
   * Takes a first look, codes included; answers from the evidence cache where this content was looked at before. The
   * length is the container's; null where it states none.
   */
  readonly lookAt: (path: string, contentId: string, durationSeconds: Seconds | null) => Promise<LookReading>;
  /** Watches a clip whole; the one on the screen goes first, and what nobody waits for gives way to all else. */
  readonly watch: (path: string, contentId: string, urgency: WatchUrgency) => Promise<WatchReading>;
  /** What an earlier watching gave; null where there was none, or the cache was deleted. Decodes nothing. */
  readonly recallWatch: (contentId: string) => Promise<WatchReading | null>;
  /** Pictures for these moments, from the cache alone; empty where the clip was never looked at. */
  readonly readStrip: (contentId: string, wanted: readonly StripStill[]) => Promise<readonly StripPicture[]>;
  /** Reps and unison of a clip that was watched; null where it was not. Decodes nothing. */
  readonly readMovement: (contentId: string, options: MovementOptions) => Promise<ClipMovement | null>;
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
