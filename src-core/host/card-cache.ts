import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import type { CardsReading } from '../app/ports.ts';
import { writeFileAtomically } from './atomic-write.ts';

/** Counts up when codes are looked for or read in another way; older entries are then looked for anew. */
const ANALYSER_VERSION = 1;

const entrySchema = z.strictObject({
  analyser: z.literal(ANALYSER_VERSION),
  readings: z.array(z.strictObject({ text: z.string(), atSeconds: z.number() })),
  problems: z.array(
    z.discriminatedUnion('code', [
      z.strictObject({ code: z.literal('decode-failed'), detail: z.string() }),
      z.strictObject({ code: z.literal('decode-cut-short'), lastSeconds: z.number(), detail: z.string() }),
    ]),
  ),
});

/** The codes of each content, kept beside the lesson; may be deleted at any time. */
export interface CardCache {
  /** Null: not looked at yet, or by an older analyser, or the entry is damaged. */
  readonly read: (contentId: string) => Promise<CardsReading | null>;
  /** Keeps what will be the same next time; a missing program or a stop is not kept. Never fails: it is a cache. */
  readonly write: (contentId: string, reading: CardsReading) => Promise<void>;
}

/** The cache in this folder, which is made with the first entry. */
export function openCardCache(folder: string): CardCache {
  const getFile = (contentId: string) => path.join(folder, `${contentId}.cards.json`);
  return {
    read: async (contentId) => {
      const text = await readFile(getFile(contentId), 'utf8').catch(() => '');
      const entry = entrySchema.safeParse(parseJson(text));
      return entry.success ? { readings: entry.data.readings, problems: entry.data.problems } : null;
    },
    write: async (contentId, { readings, problems }) => {
      const entry = entrySchema.safeParse({
        analyser: ANALYSER_VERSION,
        readings,
        problems,
      });
      if (!entry.success) return;
      await mkdir(folder, { recursive: true }).catch(() => {});
      await writeFileAtomically(getFile(contentId), `${JSON.stringify(entry.data)}\n`);
    },
  };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
