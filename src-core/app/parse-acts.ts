import { type JournalAct, journalEventSchema } from '../marking/journal-event.ts';

/** Decisions read from text, or the first line (from 1) that is none. */
export type ActsReading =
  | { readonly acts: readonly JournalAct[]; readonly badLine: null }
  | { readonly acts: null; readonly badLine: number };

/** Reads decisions, one JSON object a line, as they stand under `what` in marks.jsonl. Empty lines are skipped. */
export function parseActs(text: string): ActsReading {
  const acts: JournalAct[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    const act = journalEventSchema.shape.what.safeParse(readJson(line));
    if (!act.success) return { acts: null, badLine: index + 1 };
    acts.push(act.data);
  }
  return { acts, badLine: null };
}

function readJson(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
