import type { Problem } from '../contract/problem.ts';
import { chooseStamp } from '../intake/choose-stamp.ts';
import { type FoundFile, getFileRole } from '../intake/found-file.ts';
import type { Stamp } from '../intake/stamp.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { EpochMs } from '../platform/units.ts';
import type { FileReading, Job, LessonPorts } from './ports.ts';

/** One file's stamp, whatever lesson it is of. */
export interface StampReading {
  readonly file: FoundFile;
  readonly stamp: Stamp;
  /** Null where the file's bytes could not be read. */
  readonly facts: MediaFacts | null;
  readonly problems: readonly Problem[];
}

/** What reading stamps needs of the world. */
export interface StampPorts extends Pick<LessonPorts, 'mapAll'> {
  /** Null where the file cannot be opened. */
  readonly readFacts: (path: string) => Promise<FileReading['media'] | null>;
  readonly nowMs: EpochMs;
  /** IANA zone for local times; null: they stay local. */
  readonly zone: string | null;
}

/** Of the files found in a folder, those that may be clips. */
export function selectClips(found: readonly FoundFile[]): readonly FoundFile[] {
  return found.filter(({ name }) => getFileRole(name) === 'clip');
}

/** The stamps of files, of any lesson or none, in the order given. */
export function readStamps(
  files: readonly FoundFile[],
  ports: StampPorts,
  job: Job,
): Promise<readonly StampReading[]> {
  let done = 0;
  return ports.mapAll(files, async (file): Promise<StampReading> => {
    job.signal.throwIfAborted();
    const media = await ports.readFacts(file.path);
    const facts = media?.ok ? media.value : null;
    const { zone, nowMs } = ports;
    const stamp = chooseStamp({
      facts,
      fileName: file.name,
      fileModifiedMs: file.modifiedMs,
      zone,
      nowMs,
    });
    done += 1;
    job.onProgress({ step: 'read', done, total: files.length });
    return {
      file,
      stamp,
      facts,
      problems: media ? media.problems : [{ code: 'file-unreadable', path: file.path }],
    };
  });
}
