import { statSync } from 'node:fs';
import path from 'node:path';

/** What the system's file association opens: the plan of a lesson. */
const PLAN_NAME = 'plan.json';

/**
 * The lesson folder that a start of the program names: the first word that is a folder or the plan in one. Flags and
 * whatever is not there are passed over; null where none is named. `words` are what follows the program's own name.
 */
export function findNamedLesson(words: readonly string[], workingFolder: string): string | null {
  for (const word of words) {
    if (word.startsWith('-')) continue;
    const named = path.resolve(workingFolder, word);
    const found = statSync(named, { throwIfNoEntry: false });
    if (found?.isDirectory()) return named;
    if (found?.isFile() && isPlanName(named)) return path.dirname(named);
  }
  return null;
}

/** A plan goes by its name, or by the ending that the system knows the program by. */
function isPlanName(file: string): boolean {
  return path.basename(file) === PLAN_NAME || file.endsWith('.routemark');
}
