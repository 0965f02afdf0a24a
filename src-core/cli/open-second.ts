import { openSecondLesson } from '../app/second-marking.ts';
import { findMarkerFile, withSecondJournal } from '../host/second-marks.ts';
import type { OpenFolder } from './open-folder.ts';
import { PLAIN_NAMES, sayProblems } from './say.ts';
import type { Terminal } from './terminal.ts';

/** The lesson as a second marker sees it, writing to their own journal; says why, and gives null, where it cannot be. */
export async function openSecondMarking(
  open: OpenFolder,
  folder: string,
  { who, terminal }: { readonly who: string; readonly terminal: Terminal },
): Promise<OpenFolder | null> {
  const file = findMarkerFile(who);
  if (file === null) {
    terminal.say(`! “${who}” is no name for a second marker. Write letters, such as --second Skerry.\n`);
    return null;
  }
  const ports = withSecondJournal(open.ports, folder, file);
  const lesson = await openSecondLesson(ports, open.lesson);
  if (lesson.ok) return { ports, lesson: lesson.value, problems: [...open.problems, ...lesson.problems] };
  sayProblems(terminal, lesson.problems, PLAIN_NAMES);
  return null;
}
