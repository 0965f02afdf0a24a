import type { MediaFacts } from '../media/media-facts.ts';
import type { EpochMs } from '../platform/units.ts';
import type { FileNameDate } from './file-name-date.ts';

/** All that is known of a file's dates. */
export interface StampInput {
  /** Null where its bytes could not be read. */
  readonly facts: MediaFacts | null;
  /** Without its folder. */
  readonly fileName: string;
  /** The file system's modification time; null where unknown. */
  readonly fileModifiedMs: EpochMs | null;
  /** The school's IANA zone, in which local times are read; null: local times stay local. */
  readonly zone: string | null;
  readonly nowMs: EpochMs;
}

/** {@link StampInput} with what has been made of it so far. */
export interface StampCase {
  readonly input: StampInput;
  readonly nameDate: FileNameDate | null;
}
