import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ulid } from 'ulid';
import { type FileReading, JOURNAL_HEADER, type LessonPorts } from '../app/ports.ts';
import { readMedia } from '../media/read-media.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import type { AnalysisQueue } from './analysis-queue.ts';
import { readFullHash, readSampleHash } from './content-hash.ts';
import { openEvidencePorts } from './evidence-ports.ts';
import { withFileBytes } from './file-byte-source.ts';
import { openJournalStore } from './journal-store.ts';
import { listFiles } from './list-files.ts';
import { mapAll } from './map-all.ts';
import { describeReadError } from './write-error.ts';

/** Where a lesson lies, and what it is opened with. */
export interface LessonPlace {
  /** The lesson folder. */
  readonly folder: string;
  /** The folder of clips; `clips` in the lesson folder unless the clips are read where they lie. */
  readonly clipsFolder?: string;
  readonly signal: AbortSignal;
  /**
   * Where clips are analysed, and how many are asked for at once; unless given, the
   * threads of this process, and as many as they do well.
   */
  readonly analysis?: { readonly queue: AnalysisQueue; readonly atOnce?: number };
}

/** The ports of one lesson folder on this machine's disk. Nothing is touched before something is asked. */
export function openLessonPorts(place: LessonPlace): LessonPorts {
  const { folder, signal, analysis } = place;
  const clipsFolder = place.clipsFolder ?? path.join(folder, 'clips');
  const getFile = (relative: string) => path.join(clipsFolder, ...relative.split('/'));
  const journal = openJournalStore(path.join(folder, 'marks.jsonl'), JOURNAL_HEADER);
  return {
    readText: (name) => readTextIfThere(path.join(folder, name)),
    listClips: () => listFiles(clipsFolder),
    readFile: (relative) => readOneFile(getFile(relative)),
    readFullHash: (relative) => readFullHashIfThere(getFile(relative)),
    ...openEvidencePorts({
      cacheFolder: path.join(folder, 'evidence'),
      getFile,
      signal,
      ...(analysis && { analysis: analysis.queue }),
    }),
    readJournal: journal.read,
    appendToJournal: journal.append,
    mapAll: (items, work) => mapAll(items, work, analysis?.atOnce),
    nowMs: () => Date.now(),
    newId: () => ulid(),
  };
}

/** A file's text as UTF-8; null where there is none. */
export async function readTextIfThere(file: string): Promise<Outcome<string | null, StorageProblem>> {
  try {
    return succeed(await readFile(file, 'utf8'));
  } catch (error) {
    const problem = describeReadError(error, file);
    return problem.code === 'folder-missing' ? succeed(null) : fail(problem);
  }
}

async function readFullHashIfThere(file: string): Promise<string | null> {
  try {
    return await readFullHash(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall !== undefined) return null;
    throw error;
  }
}

async function readOneFile(file: string): Promise<FileReading | null> {
  try {
    const [media, sampleHash] = [await withFileBytes(file, readMedia), await readSampleHash(file)];
    return { media, sampleHash };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall !== undefined) return null;
    throw error;
  }
}
