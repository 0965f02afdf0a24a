import path from 'node:path';
import { count } from '../../../renderer/text/english/amounts.ts';
import type { Names } from '../../../renderer/text/names.ts';
import { buildHandInAct, draftSheet, type SheetDraft } from '../../app/export-sheet.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import { markLesson } from '../../app/mark-lesson.ts';
import { parseColumns } from '../../app/parse-columns.ts';
import type { Problem } from '../../contract/problem.ts';
import { writeFileAtomically } from '../../host/atomic-write.ts';
import { getLessonNames } from '../lesson-names.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `export` as typed. */
export interface ExportOptions extends LessonOptions {
  /** Kind of sheet; `csv` is the only one so far. */
  readonly to: string;
  readonly out: string;
  /** `Head=field,…`, instead of the plan's columns. */
  readonly columns?: string;
  readonly withOpenFlags?: boolean;
  readonly by?: string;
}

/** `export <lesson>`: writes the grade sheet, whole or not at all, and keeps a record of it in the journal. */
export async function runExport(
  folder: string,
  options: ExportOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const columns = options.columns === undefined ? null : parseColumns(options.columns);
  const refusal = findRefusal(options, columns !== null);
  if (refusal) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const draft = draftSheet(graded, { evenWithOpenFlags: options.withOpenFlags === true, columns });
  const written = draft.text === null ? null : await writeSheet(open, draft, options);
  const problems = [...draft.problems, ...(written?.problems ?? [])];
  const isWritten = written?.ok === true;
  report({ draft, problems, isWritten, names: getLessonNames(graded) }, options, terminal);
  if (!isWritten) return 2;
  return draft.check.isFinal && problems.length === 0 ? 0 : 1;
}

interface Report {
  readonly draft: SheetDraft;
  readonly problems: readonly Problem[];
  readonly isWritten: boolean;
  readonly names: Names;
}

function report(
  { draft, problems, isWritten, names }: Report,
  options: ExportOptions,
  terminal: Terminal,
): void {
  if (options.json) {
    const { counts, isFinal } = draft.check;
    const listed = problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson({ out: isWritten ? options.out : null, isFinal, counts, problems: listed }));
    return;
  }
  if (isWritten) terminal.write(describeSheet(options.out, draft));
  sayProblems(terminal, problems, names);
}

function findRefusal({ to, columns }: ExportOptions, isMapped: boolean): string | null {
  if (to !== 'csv') return `A sheet cannot be written as “${to}”. Write --to csv.`;
  if (columns === undefined || isMapped) return null;
  return 'The columns make no sense. Write them as "Student ID=pupil,Score=points,Comment=comment".';
}

async function writeSheet(open: OpenFolder, draft: SheetDraft, options: ExportOptions) {
  const out = path.resolve(options.out);
  const written = await writeFileAtomically(out, draft.text ?? '');
  if (!written.ok) return written;
  const act = buildHandInAct([options.out], draft.check);
  return markLesson(open.ports, [act], options.by ?? 'teacher');
}

function describeSheet(out: string, { check }: SheetDraft): string {
  const { pupils, openFlags } = check.counts;
  const total = pupils.confirmed + pupils.unconfirmed + pupils.absent + pupils.excused;
  const state = check.isFinal
    ? 'final'
    : `not final: ${count(pupils.unconfirmed, 'mark')} unconfirmed, ${count(openFlags, 'flag')} open`;
  return `${out}: ${count(total, 'pupil')}, ${state}.\n`;
}
