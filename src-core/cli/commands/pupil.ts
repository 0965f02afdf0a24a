import path from 'node:path';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { RECORD, writeRecord } from '../../../renderer/text/english/pupil-record.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import { openJournal } from '../../app/open-lesson.ts';
import { findPupilRecord } from '../../app/pupil-record.ts';
import { writeFileAtomically } from '../../host/atomic-write.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { findPlaceRefusal } from '../export-place.ts';
import { type LessonOptions, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `pupil` as typed. */
export interface PupilOptions extends LessonOptions {
  /** Whether a file that is there is written over. */
  readonly replace?: boolean;
  /** Where to write it; the standard output unless told. */
  readonly out?: string;
}

/** `pupil <lesson> <id>`: everything held on one pupil, without others' names, and where it is kept. */
export async function runPupil(
  [folder, id]: readonly [lesson: string, id: string],
  options: PupilOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { out } = options;
  const refusal = out === undefined ? null : await findPlaceRefusal({ ...options, folder, out });
  if (refusal !== null) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const journal = await openJournal(open.ports);
  const events = journal.ok ? journal.value.events : [];
  const record = findPupilRecord(graded, { pupil: id, events, words: ACCOUNT });
  const names = getLessonNames(graded);
  if (!record) {
    terminal.say(`! ${RECORD.unknown(id)}\n`);
    return 2;
  }
  const text = options.json ? formatJson(record) : writeRecord(record, names);
  const written = out === undefined ? null : await writeFileAtomically(path.resolve(out), text);
  if (out === undefined) terminal.write(text);
  sayProblems(terminal, [...open.problems, ...(written?.problems ?? [])], names);
  terminal.say(`${RECORD.readFirst}\n`);
  return written?.ok === false ? 2 : 0;
}
