import { mkdir, readFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import * as z from 'zod';
import { columnMappingSchema, lessonIdSchema } from '../../contract/desk-view.ts';
import { writeFileAtomically } from '../atomic-write.ts';

const recordSchema = z.object({
  /** Newest first. */
  lessons: z
    .array(
      z.object({
        lesson: lessonIdSchema,
        path: z.string(),
        /** Where the clips are read in place; null: in the lesson folder. */
        clipsPath: z.string().nullable(),
        title: z.string(),
        className: z.string(),
        date: z.string(),
        openedMs: z.number(),
        isDemo: z.boolean(),
      }),
    )
    .max(200),
  /** Second markings opened here, newest first; each goes with the lesson that it is one `of`. */
  seconds: z
    .array(z.object({ lesson: lessonIdSchema, of: lessonIdSchema, who: z.string() }))
    .max(1000)
    .default([]),
  mappings: z.array(columnMappingSchema).max(100),
  /** Path of the folder that the last hand-in outside its lesson went to; null: none did yet. */
  lastFolder: z.string().nullable().default(null),
  /** Path of the school's OneRoster set of the last hand-in that was built on one. */
  schoolSet: z.string().nullable().default(null),
});

/** What the desk remembers between two starts. It is a convenience: lessons are complete without it. */
export type DeskRecord = z.infer<typeof recordSchema>;

const EMPTY: DeskRecord = { lessons: [], seconds: [], mappings: [], lastFolder: null, schoolSet: null };

/** How many lessons are remembered. */
const MOST_LESSONS = 50;

/** How many second markings are remembered. */
const MOST_SECONDS = 200;

/** The desk's memory on disk. */
export interface DeskRecordFile {
  readonly get: () => DeskRecord;
  /** Changes what is remembered; written at once, and kept in memory alone where the disk refuses. */
  readonly change: (edit: (record: DeskRecord) => DeskRecord) => Promise<void>;
}

/** Where this user's programs keep their settings, ours below; `ROUTEMARK_HOME` says otherwise. */
export function getHomeFolder(environment: NodeJS.ProcessEnv = process.env): string {
  if (environment.ROUTEMARK_HOME) return path.resolve(environment.ROUTEMARK_HOME);
  if (process.platform === 'win32') {
    return path.join(environment.APPDATA ?? path.join(homedir(), 'AppData', 'Roaming'), 'Routemark');
  }
  if (process.platform === 'darwin')
    return path.join(homedir(), 'Library', 'Application Support', 'Routemark');
  return path.join(environment.XDG_CONFIG_HOME || path.join(homedir(), '.config'), 'routemark');
}

/** Reads `desk.json` in the desk's folder; what cannot be read counts as never written. */
export async function openDeskRecord(folder: string): Promise<DeskRecordFile> {
  const file = path.join(folder, 'desk.json');
  let record = await readRecord(file);
  let queue: Promise<unknown> = Promise.resolve();
  return {
    get: () => record,
    change: async (edit) => {
      const edited = edit(record);
      const lessons = edited.lessons.slice(0, MOST_LESSONS);
      const isKnown = (of: string) => lessons.some(({ lesson }) => lesson === of);
      const seconds = edited.seconds.filter(({ of }) => isKnown(of)).slice(0, MOST_SECONDS);
      record = { ...edited, lessons, seconds };
      const text = `${JSON.stringify(record, null, 2)}\n`;
      queue = queue.then(async () => {
        await mkdir(folder, { recursive: true, mode: 0o700 }).catch(() => {});
        await writeFileAtomically(file, text);
      });
      await queue;
    },
  };
}

async function readRecord(file: string): Promise<DeskRecord> {
  try {
    return recordSchema.parse(JSON.parse(await readFile(file, 'utf8')));
  } catch {
    return EMPTY;
  }
}
