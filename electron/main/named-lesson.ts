import { statSync } from 'node:fs';
import path from 'node:path';

/**
 * The file that stands for a lesson. The installer ties no ending to the program: a lesson is a folder, and a
 * `plan.json` of other programs must go on opening in them. A word at the start, or the system's “open with”, names one.
 */
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
    if (found?.isFile() && path.basename(named) === PLAN_NAME) return path.dirname(named);
  }
  return null;
}
