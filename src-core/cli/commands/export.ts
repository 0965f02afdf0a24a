import { count } from '../../../renderer/text/english/amounts.ts';
import { buildHandInAct, type HandInCheck } from '../../app/export-sheet.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import { markLesson } from '../../app/mark-lesson.ts';
import type { Problem } from '../../contract/problem.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { getSchoolDay } from '../../host/school-day.ts';
import { EXPORT_KINDS, type KindOptions, type KindWriting } from '../export-kinds.ts';
import { findPlaceRefusal } from '../export-place.ts';
import { EXPORT_WORDS } from '../export-words.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems, toJsonProblem } from '../say.ts';
import { buildStillSource } from '../still-source.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `export` as typed. */
export interface ExportOptions extends LessonOptions, KindOptions {
  /** Whether a file that is there is written over. */
  readonly replace?: boolean;
  /** Kind of sheet: one of `EXPORT_WORDS`. */
  readonly to: string;
  readonly by?: string;
}

/** `export <lesson>`: writes the marks, whole or not at all, and keeps a record of it in the journal. */
export async function runExport(
  folder: string,
  options: ExportOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const kind = findKind(options.to);
  const refusal = kind
    ? (kind.findRefusal(options) ?? (await findPlaceRefusal({ folder, ...options })))
    : `A sheet cannot be written as “${options.to}”. Write --to ${EXPORT_WORDS.join(', --to ')}.`;
  if (!kind || refusal) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const today = getSchoolDay(open.lesson.plan.zone, open.ports.nowMs());
  const stills = buildStillSource(open, graded, { folder, ...options });
  const writing = await kind.write({ graded, today, stills, job: terminal.job }, options);
  const recorded = await keepRecord(open, writing, options);
  const problems = [...open.problems, ...writing.problems, ...recorded];
  const names = getLessonNames(graded);
  if (options.json) {
    const listed = problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson(describeAsData(options.out, writing, listed)));
  } else {
    if (writing.isWritten && writing.check) terminal.write(describeSheet(options.out, writing.check));
    sayProblems(terminal, problems, names);
  }
  if (!writing.isWritten) return 2;
  return writing.check?.isFinal ? getExitCode(problems) : 1;
}

function findKind(typed: string) {
  const word = EXPORT_WORDS.find((known) => known === typed);
  return word && EXPORT_KINDS[word];
}

/** The record of what was written; one that fails does not unwrite the sheet. */
async function keepRecord(
  open: OpenFolder,
  { isWritten, check }: KindWriting,
  { out, by }: ExportOptions,
): Promise<readonly Problem[]> {
  if (!isWritten || !check) return [];
  const recorded = await markLesson(open.ports, [buildHandInAct([out], check)], by ?? 'teacher');
  return recorded.ok ? [] : recorded.problems;
}

function describeAsData(out: string, { isWritten, check }: KindWriting, problems: readonly object[]): object {
  return {
    out: isWritten ? out : null,
    isFinal: check?.isFinal ?? false,
    counts: check?.counts ?? null,
    problems,
  };
}

function describeSheet(out: string, { counts, isFinal }: HandInCheck): string {
  const { pupils, openFlags } = counts;
  const total = pupils.confirmed + pupils.unconfirmed + pupils.absent + pupils.excused;
  const state = isFinal
    ? 'final'
    : `not final: ${count(pupils.unconfirmed, 'mark')} unconfirmed, ${count(openFlags, 'flag')} open`;
  return `${out}: ${count(total, 'pupil')}, ${state}.\n`;
}
