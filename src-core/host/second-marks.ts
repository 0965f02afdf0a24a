import { mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';
import { JOURNAL_HEADER, type LessonPorts } from '../app/ports.ts';
import type { LessonPart } from '../lesson-file/lesson-parts.ts';
import { fail } from '../platform/outcome.ts';
import { openJournalStore } from './journal-store.ts';
import { toPlainName } from './plain-name.ts';
import { describeWriteError } from './write-error.ts';

/** Second markings lie in a folder of their own, a journal a marker, so that none can touch the first. */
const SECOND_FOLDER = 'second-marks' satisfies LessonPart;

const ENDING = '.jsonl';

/** The name of a marker's file without its ending: letters and digits joined by `-`; null where none are left. */
export function findMarkerFile(who: string): string | null {
  const name = toPlainName(who.toLowerCase()).slice(0, 60);
  return name === '' ? null : name;
}

/** The markers who have marked this lesson a second time, by the names of their files, in order. */
export async function listSecondMarkers(folder: string): Promise<readonly string[]> {
  const names = await readdir(path.join(folder, SECOND_FOLDER)).catch(() => []);
  return names
    .filter((name) => name.endsWith(ENDING) && !name.startsWith('.'))
    .map((name) => name.slice(0, -ENDING.length))
    .sort();
}

/** The same lesson with a second marker's journal in the place of the first's; all else is shared. */
export function withSecondJournal(ports: LessonPorts, folder: string, markerFile: string): LessonPorts {
  const file = path.join(folder, SECOND_FOLDER, `${markerFile}${ENDING}`);
  const store = openJournalStore(file, JOURNAL_HEADER);
  return {
    ...ports,
    readJournal: store.read,
    appendToJournal: async (lines) => {
      try {
        await mkdir(path.dirname(file), { recursive: true });
      } catch (error) {
        return fail(describeWriteError(error, file));
      }
      return store.append(lines);
    },
  };
}
