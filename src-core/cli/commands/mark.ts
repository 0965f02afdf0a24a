import { readFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { count } from '../../../renderer/text/english/amounts.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import { type MarkOrder, markLesson, mergeIntoLesson } from '../../app/mark-lesson.ts';
import { parseActs } from '../../app/parse-acts.ts';
import { isSecondAct, mergeIntoSecond } from '../../app/second-marking.ts';
import { getPlanNames } from '../../host/lesson-names.ts';
import {
  buildActs,
  DecisionError,
  type DecisionOptions,
  refuseClashes,
  type WayOptions,
} from '../decision.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { openSecondMarking } from '../open-second.ts';
import { formatJson, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `mark` as typed. */
export interface MarkOptions extends DecisionOptions, WayOptions, LessonOptions {}

/** `mark <lesson>`: records decisions; each is on the disk before it is acknowledged. */
export async function runMark(folder: string, options: MarkOptions, terminal: Terminal): Promise<ExitCode> {
  const first = await openFolder(folder, options, terminal);
  const open = first && (await openForMarker(first, folder, { options, terminal }));
  if (!first || !open) return 2;
  let marked: Awaited<ReturnType<typeof record>>;
  try {
    refuseClashes(options);
    marked = await record({ first, open }, options, terminal);
  } catch (error) {
    if (!(error instanceof DecisionError)) throw error;
    terminal.say(`! ${error.message}\n`);
    return 2;
  }
  const names = getPlanNames(open.lesson);
  if (options.json) {
    const problems = marked.problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson({ events: marked.ok ? marked.value : [], problems }));
  } else if (marked.ok) terminal.write(`${count(marked.value.length, 'decision')} recorded.\n`);
  sayProblems(terminal, marked.problems, names);
  return marked.ok ? 0 : 2;
}

async function openForMarker(
  open: OpenFolder,
  folder: string,
  { options, terminal }: { readonly options: MarkOptions; readonly terminal: Terminal },
): Promise<OpenFolder | null> {
  return options.second === undefined
    ? open
    : openSecondMarking(open, folder, { who: options.second, terminal });
}

/** The lesson itself, and as whoever marks it here sees it: the same, but for a second marker. */
interface Markings {
  readonly first: OpenFolder;
  readonly open: OpenFolder;
}

async function record({ first, open }: Markings, options: MarkOptions, terminal: Terminal) {
  if (options.merge !== undefined) {
    const other = await readInput(options.merge);
    return options.second === undefined
      ? mergeIntoLesson(open.ports, other)
      : mergeIntoSecond(open.ports, first.ports, other);
  }
  const order = await readOrder(open, options, terminal);
  if (options.second !== undefined && typeof order !== 'string' && !order.every(isSecondAct)) {
    throw new DecisionError('A second marking holds answers, notes and squad marks alone.');
  }
  return markLesson(open.ports, order, options.second ?? options.by ?? 'teacher');
}

async function readOrder(open: OpenFolder, options: MarkOptions, terminal: Terminal): Promise<MarkOrder> {
  if (options.undo) return 'undo';
  if (options.redo) return 'redo';
  if (options.list !== undefined) return readList(options.list);
  return buildActs(options, await gradeLesson(open.ports, open.lesson, terminal.job));
}

async function readList(file: string): Promise<MarkOrder> {
  const { acts, badLine } = parseActs(await readInput(file));
  if (acts) return acts;
  throw new DecisionError(`Line ${badLine} of the list is no decision; nothing was recorded.`);
}

async function readInput(file: string): Promise<string> {
  const input = await (file === '-' ? text(process.stdin) : readFile(file, 'utf8')).catch(() => null);
  if (input === null) throw new DecisionError(`${file} cannot be read.`);
  return input;
}
