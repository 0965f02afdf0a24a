import { statSync } from 'node:fs';
import path from 'node:path';

/**
 * The file that stands for a lesson. The installer ties no ending to the program: a lesson is a folder, and a
 * `plan.json` of other programs must go on opening in them. A word at the start, or the system's “open with”, names one.
 */
const PLAN_NAME = 'plan.json';

/** A start of the program: its words, and where they were typed. */
export interface ProgramStart {
  /** What follows the name of Electron or of the packaged program. */
  readonly words: readonly string[];
  readonly workingFolder: string;
  /** The program's own folder: Electron is started with it as a word, somewhere among the flags that it adds. */
  readonly ownFolder: string;
}

/**
 * The lesson folder that a start of the program names: the first word that is a folder or the plan in one. Flags, the
 * program's own folder and whatever is not there are passed over; null where none is named.
 */
export function findNamedLesson({ words, workingFolder, ownFolder }: ProgramStart): string | null {
  for (const word of words) {
    if (word.startsWith('-')) continue;
    const named = path.resolve(workingFolder, word);
    if (named === path.resolve(ownFolder)) continue;
    const found = statSync(named, { throwIfNoEntry: false });
    if (found?.isDirectory()) return named;
    if (found?.isFile() && path.basename(named) === PLAN_NAME) return path.dirname(named);
  }
  return null;
}
