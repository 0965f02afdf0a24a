import { realpath } from 'node:fs/promises';
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
import { toOneLine } from '../one-line.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems, toJsonProblem } from '../say.ts';
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
  const refusal = findRefusal(options, columns !== null) ?? (await findPlaceRefusal(folder, options));
  if (refusal) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const draft = draftSheet(graded, { evenWithOpenFlags: options.withOpenFlags === true, columns });
  const written = draft.text === null ? null : await writeSheet(open, draft, options);
  const problems = [...open.problems, ...draft.problems, ...(written?.problems ?? [])];
  const isWritten = written?.isWritten === true;
  report({ draft, problems, isWritten, names: getLessonNames(graded) }, options, terminal);
  if (!isWritten) return 2;
  return draft.check.isFinal ? getExitCode(problems) : 1;
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

/** A lesson's own files and the clips are never written over, however the name of the sheet came about. */
async function findPlaceRefusal(folder: string, { out, clips }: ExportOptions): Promise<string | null> {
  const target = await locate(out);
  const clipsFolder = await locate(path.join(clips ?? path.join(folder, 'clips'), 'any'));
  const own = await Promise.all(OWN_FILES.map((name) => locate(path.join(folder, name))));
  const isAmongClips = `${target}${path.sep}`.startsWith(`${path.dirname(clipsFolder)}${path.sep}`);
  if (!own.includes(target) && !isAmongClips) return null;
  return `${toOneLine(out)} belongs to the lesson, and the sheet would take its place. Write --out ${path.join('hand-in', 'sheet.csv')}, say.`;
}

const OWN_FILES = ['plan.json', 'roster.csv', 'marks.jsonl'] as const;

/** The absolute path with links in its folders followed, as far as they are there. */
async function locate(file: string): Promise<string> {
  const { dir, base } = path.parse(path.resolve(file));
  return path.join(await realpath(dir).catch(() => dir), base);
}

interface SheetWriting {
  readonly isWritten: boolean;
  readonly problems: readonly Problem[];
}

/** Writes the sheet and then the record of it; a record that fails does not unwrite the sheet. */
async function writeSheet(
  open: OpenFolder,
  draft: SheetDraft,
  options: ExportOptions,
): Promise<SheetWriting> {
  const written = await writeFileAtomically(path.resolve(options.out), draft.text ?? '');
  if (!written.ok) return { isWritten: false, problems: written.problems };
  const act = buildHandInAct([options.out], draft.check);
  const recorded = await markLesson(open.ports, [act], options.by ?? 'teacher');
  return { isWritten: true, problems: recorded.ok ? [] : recorded.problems };
}

function describeSheet(out: string, { check }: SheetDraft): string {
  const { pupils, openFlags } = check.counts;
  const total = pupils.confirmed + pupils.unconfirmed + pupils.absent + pupils.excused;
  const state = check.isFinal
    ? 'final'
    : `not final: ${count(pupils.unconfirmed, 'mark')} unconfirmed, ${count(openFlags, 'flag')} open`;
  return `${out}: ${count(total, 'pupil')}, ${state}.\n`;
}
