import { buildHandInAct, type HandInCheck } from '../../app/export-sheet.ts';
import { recordEntries } from '../../app/record-entries.ts';
import type { Problem } from '../../contract/problem.ts';
import type { LessonSession } from './lesson-session.ts';

/**
 * Keeps a record in the journal of a file that was written; must have its turn. The file stands: that the journal does
 * not say so is told beside it.
 */
export async function recordHandIn(
  session: LessonSession,
  who: string,
  { fileName, check }: { readonly fileName: string; readonly check: HandInCheck },
): Promise<readonly Problem[]> {
  const ports = session.getPorts();
  const act = buildHandInAct([fileName], check);
  const journal = await recordEntries(ports, [{ id: ports.newId(), act }], who);
  if (!journal.ok) return journal.problems;
  session.takeJournal(journal.value);
  return [];
}
