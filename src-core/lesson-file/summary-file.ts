import * as z from 'zod';
import { type LessonSummary, lessonSummarySchema } from '../marking/look-back/lesson-summary.ts';

const hash = z.string().regex(/^[0-9a-f]{32}$/);

/** What a summary was made from; where any of it differs today, the figures may too. */
const sourceSchema = z.strictObject({
  /** Of plan.json, roster.csv and marks.jsonl, byte for byte. */
  records: hash,
  /** Of the names below the folder of clips. */
  clips: hash,
  /** How many names those are. */
  files: z.int().min(0),
  /** Clips in the evidence: looked into for a card, and watched whole. */
  looked: z.int().min(0),
  watched: z.int().min(0),
});

/** What a summary was made from: hashes of 32 hex digits of the lesson's records and clips, and counts. */
export type SummarySource = z.infer<typeof sourceSchema>;

const summaryFileSchema = z.strictObject({
  format: z.literal('routemark-summary'),
  /** Counts up when the same lesson would give other figures; older ones are made anew. */
  version: z.literal(1),
  from: sourceSchema,
  summary: lessonSummarySchema,
});

/** A summary with what it was made from. */
export interface KeptSummary {
  readonly from: SummarySource;
  readonly summary: LessonSummary;
}

/** summary.json's text: one line of JSON with its line end, to be written as UTF-8. */
export function buildSummaryText({ from, summary }: KeptSummary): string {
  const file: z.infer<typeof summaryFileSchema> = { format: 'routemark-summary', version: 1, from, summary };
  return `${JSON.stringify(file)}\n`;
}

/** Reads summary.json; null where it is none of this version, for it can be made anew. */
export function parseSummary(text: string): KeptSummary | null {
  try {
    const { from, summary } = summaryFileSchema.parse(JSON.parse(text));
    return { from, summary };
  } catch {
    return null;
  }
}
