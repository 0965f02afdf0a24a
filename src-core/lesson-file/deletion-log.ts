import * as z from 'zod';

const deletionSchema = z.object({
  /** ISO 8601 in UTC. */
  at: z.iso.datetime(),
  who: z.string(),
  /** `films`: clips, stills and all that was read from them. `all`: everything of the lesson. */
  what: z.enum(['films', 'all']),
  files: z.int(),
  bytes: z.int(),
  /** Written before the first file goes: so much was to be deleted. The line that follows says what was. */
  isBegun: z.literal(true).optional(),
});

/**
 * One line of deletions.jsonl: that something was deleted, and nothing of what was in it. One that is only begun was
 * cut off: how much of it went is not known.
 */
export type DeletionEntry = z.infer<typeof deletionSchema>;

/** What may be deleted at once. */
export type HoldingScope = DeletionEntry['what'];

/**
 * Reads deletions.jsonl, oldest first, one entry a deletion: of the lines of one, the last counts. A line that is none,
 * a torn one say, is passed over.
 */
export function parseDeletionLog(text: string): readonly DeletionEntry[] {
  const entries = new Map<string, DeletionEntry>();
  for (const line of text.split('\n')) {
    const entry = parseLine(line);
    if (entry) entries.set(`${entry.at} ${entry.what} ${entry.who}`, entry);
  }
  return [...entries.values()];
}

function parseLine(line: string): DeletionEntry | null {
  try {
    return deletionSchema.parse(JSON.parse(line));
  } catch {
    return null;
  }
}

/** One file that a lesson holds. */
export interface HeldFile {
  /** Below the lesson folder, with `/` between the parts. */
  readonly path: string;
  readonly bytes: number;
}

/** What a deletion would take, and what it would leave. */
export interface Holdings {
  readonly files: readonly HeldFile[];
  /** Names in the lesson folder that are not Routemark's, or links to elsewhere: never deleted. */
  readonly leftAlone: readonly string[];
  /** Stands for exactly these files as they are: 8 hex digits, to be given back as the confirmation. */
  readonly code: string;
}
