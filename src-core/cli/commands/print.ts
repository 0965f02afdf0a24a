import path from 'node:path';
import { count } from '../../../renderer/text/english/amounts.ts';
import type { Names } from '../../../renderer/text/names.ts';
import { draftPack, parsePackParts } from '../../app/print-pack.ts';
import type { Problem } from '../../contract/problem.ts';
import { getPlanNames } from '../../host/lesson-names.ts';
import { type PackPlace, type PrintedPack, printPack } from '../../host/pdf/print-pack.ts';
import { findLessonRefusal } from '../export-place.ts';
import { toOneLine } from '../one-line.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `print` as typed. */
export interface PrintOptions {
  readonly paper: string;
  readonly grey?: boolean;
  /** Parts with commas between. */
  readonly pages: string;
  /** A name that ends in `.pdf` is one file; anything else is a folder that gets a file for each part. */
  readonly out: string;
  readonly replace?: boolean;
  readonly json?: boolean;
}

/** `print <lesson>`: draws the print pack into PDF files, each whole or not at all. */
export async function runPrint(folder: string, options: PrintOptions, terminal: Terminal): Promise<ExitCode> {
  const parts = parsePackParts(options.pages);
  const { paper, out } = options;
  const place = getPlace(folder, options);
  const inPlace = 'file' in place ? out : path.join(out, 'any.pdf');
  const refusal = getRefusal(options, parts !== null) ?? (await findLessonRefusal({ folder, out: inPlace }));
  if (!parts || !isPaper(paper) || refusal !== null) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const draft = draftPack(open.lesson, { parts, paper, isGrey: options.grey === true });
  const printed = await printPack(draft, place, terminal.job);
  const problems = [...open.problems, ...printed.problems];
  const names = getPlanNames(open.lesson);
  report({ printed: printed.ok ? printed.value : null, problems, names }, options, terminal);
  return printed.ok ? getExitCode(problems, names) : 2;
}

interface Report {
  /** Null: nothing was. */
  readonly printed: PrintedPack | null;
  readonly problems: readonly Problem[];
  readonly names: Names;
}

function report({ printed, problems, names }: Report, options: PrintOptions, terminal: Terminal): void {
  if (options.json) {
    const listed = problems.map((problem) => toJsonProblem(problem, names));
    const [files, pages] = [printed?.paths ?? [], printed?.pageCount ?? 0];
    terminal.write(formatJson({ files, pages, problems: listed }));
    return;
  }
  if (printed) {
    for (const file of printed.paths) terminal.write(`${toOneLine(file)}\n`);
    const paper = options.paper === 'a4' ? 'A4' : 'Letter';
    terminal.write(`${count(printed.pageCount, 'page')} for ${paper}.\n`);
  }
  sayProblems(terminal, problems, names);
}

function isPaper(paper: string): paper is 'a4' | 'letter' {
  return paper === 'a4' || paper === 'letter';
}

function getPlace(lessonFolder: string, { out, replace = false }: PrintOptions): PackPlace {
  const place = out.toLowerCase().endsWith('.pdf') ? { file: out } : { folder: out };
  return { lessonFolder, replace, ...place };
}

function getRefusal({ pages, paper }: PrintOptions, isPacked: boolean): string | null {
  if (!isPacked) return `“${toOneLine(pages)}” are not pages of the pack. Write --pages cards,clues, say.`;
  if (!isPaper(paper)) return `There is no paper “${toOneLine(paper)}” here. Write --paper a4 or letter.`;
  return null;
}
