import path from 'node:path';
import { count } from '../../../renderer/text/english/amounts.ts';
import { nameSlip, SLIP, sayNext, sayWell, writeSlip } from '../../../renderer/text/english/slips.ts';
import { findFilmsDeleted } from '../../app/check-graded.ts';
import { draftSlips, type Slip } from '../../app/draft-slips.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { draftPaper, parseSheetOrder } from '../../app/print-sheet.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { findPaperRefusal } from '../export-kinds.ts';
import { findPlaceRefusal } from '../export-place.ts';
import { toOneLine } from '../one-line.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems, toJsonProblem } from '../say.ts';
import { buildStillSource } from '../still-source.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `slips` as typed. */
export interface SlipsOptions extends LessonOptions {
  /** Whether a file that is there is written over. */
  readonly replace?: boolean;
  /** `squads` or `pupils`. */
  readonly of: string;
  /** One pupil's alone, by the roster's id. */
  readonly pupil?: string;
  /** A PDF instead of the standard output. */
  readonly out?: string;
  readonly paper?: string;
  readonly grey?: boolean;
}

/** `slips <lesson>`: what each squad or pupil did well and can do next, from what was confirmed; Markdown, or a PDF. */
export async function runSlips(folder: string, options: SlipsOptions, terminal: Terminal): Promise<ExitCode> {
  const kind = options.pupil === undefined ? options.of : 'pupils';
  const refusal = await findRefusal(folder, kind, options);
  if ((kind !== 'squads' && kind !== 'pupils') || refusal !== null) {
    terminal.say(`! ${refusal}\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const deletedAt = findFilmsDeleted(graded);
  if (deletedAt !== null) {
    sayProblems(terminal, [{ code: 'films-deleted', at: deletedAt }], getLessonNames(graded));
    return 2;
  }
  const { pupil, out } = options;
  const slips = draftSlips(graded, kind).filter((slip) => pupil === undefined || slip.pupil?.id === pupil);
  if (slips.length === 0) {
    terminal.say(`! There is no pupil “${pupil ?? ''}” in roster.csv.\n`);
    return 2;
  }
  if (out === undefined) {
    write(slips, graded, { terminal, json: options.json === true });
    sayProblems(terminal, open.problems, getLessonNames(graded));
  } else if (!(await print({ folder, graded, open, kind }, { ...options, out }, terminal))) return 2;
  return sayWaiting(graded, terminal);
}

async function findRefusal(folder: string, kind: string, options: SlipsOptions): Promise<string | null> {
  if (kind !== 'squads' && kind !== 'pupils')
    return `There are no slips of “${kind}”. Write --of squads or --of pupils.`;
  const { out } = options;
  if (out === undefined) return null;
  return findPaperRefusal(options) ?? (await findPlaceRefusal({ folder, ...options, out }));
}

function write(
  slips: readonly Slip[],
  graded: GradedLesson,
  { terminal, json }: { readonly terminal: Terminal; readonly json: boolean },
): void {
  const { plan } = graded.lesson;
  if (json) terminal.write(formatJson(slips.map((slip) => describeAsData(slip, graded))));
  else terminal.write(slips.map((slip) => writeSlip(plan, slip)).join('\n---\n\n'));
}

function sayWaiting({ score }: GradedLesson, terminal: Terminal): ExitCode {
  const waiting = score.squads
    .flatMap(({ slots }) => slots)
    .filter(({ state }) => state === 'pencilled' || state === 'flagged');
  if (waiting.length === 0) return 0;
  terminal.say(`! ${count(waiting.length, 'clip')} not confirmed yet; the slips say nothing about them.\n`);
  return 1;
}

interface Printing {
  readonly folder: string;
  readonly graded: GradedLesson;
  readonly open: OpenFolder;
  readonly kind: 'squads' | 'pupils';
}

/** Draws the slips into a PDF, and says so; false where that could not be done. */
async function print(
  { folder, graded, open, kind }: Printing,
  options: SlipsOptions & { readonly out: string },
  terminal: Terminal,
): Promise<boolean> {
  const parsed = parseSheetOrder(kind === 'squads' ? 'squad-slips' : 'pupil-slips', options);
  if ('wrong' in parsed) return false;
  const draft = draftPaper(graded, parsed.order, { evenWithOpenFlags: true, pupil: options.pupil ?? null });
  const names = getLessonNames(graded);
  const stills = buildStillSource(open, graded, { folder, ...options });
  const { printSheet } = await import('../../host/pdf/print-sheet.ts');
  const printed = await printSheet(draft, { file: path.resolve(options.out), stills, names }, terminal.job);
  const problems = [...open.problems, ...printed.problems];
  const pages = printed.ok ? printed.value.pageCount : 0;
  if (options.json) {
    const listed = problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson({ out: printed.ok ? options.out : null, pages, problems: listed }));
  } else {
    if (printed.ok) terminal.write(`${toOneLine(options.out)}: ${count(pages, 'page')}.\n`);
    sayProblems(terminal, problems, names);
  }
  return printed.ok;
}

function describeAsData(slip: Slip, { lesson: { plan } }: GradedLesson): object {
  return {
    ...slip,
    pupil: slip.pupil?.id ?? null,
    heading: nameSlip(plan, slip),
    says: {
      well: slip.well.map((point) => sayWell(plan, point)),
      next: slip.next.map((point) => sayNext(plan, point)),
      instead: slip.presence === 'there' ? null : SLIP[slip.presence],
    },
  };
}
