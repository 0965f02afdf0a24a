import { z } from 'zod';

const deletionSchema = z.object({
  /** ISO 8601 in UTC. */
  at: z.iso.datetime(),
  who: z.string(),
  /** `films`: clips, stills and all that was read from them. `all`: everything of the lesson. */
  what: z.enum(['films', 'all']),
  files: z.int(),
  bytes: z.int(),
});

/** One line of deletions.jsonl: that something was deleted, and nothing of what was in it. */
export type DeletionEntry = z.infer<typeof deletionSchema>;

/** What may be deleted at once. */
export type HoldingScope = DeletionEntry['what'];

/** Reads deletions.jsonl, oldest first; a line that is none, a torn one at the end say, is passed over. */
export function parseDeletionLog(text: string): readonly DeletionEntry[] {
  return text.split('\n').flatMap((line) => {
    try {
      return [deletionSchema.parse(JSON.parse(line))];
    } catch {
      return [];
    }
  });
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
