import path from 'node:path';
import { ACCOUNT } from '../../renderer/text/english/account.ts';
import { draftBundle } from '../app/export-bundle.ts';
import { draftAccount, draftSheet, type HandInCheck } from '../app/export-sheet.ts';
import type { GradedLesson } from '../app/graded-lesson.ts';
import { parseColumns } from '../app/parse-columns.ts';
import type { Job } from '../app/ports.ts';
import { draftPaper, parseSheetOrder, type TypedSheetOrder } from '../app/print-sheet.ts';
import type { Problem } from '../contract/problem.ts';
import { writeFileAtomically } from '../host/atomic-write.ts';
import { getLessonNames } from '../host/lesson-names.ts';
import type { StillSource } from '../host/pdf/sheet-stills.ts';
import { readBundle } from '../host/read-bundle.ts';
import { writeBundle } from '../host/write-bundle.ts';
import type { ExportWord } from './export-words.ts';

/** What `export` was asked for, as typed; paper, grey and stills are for what is printed. */
export interface KindOptions extends TypedSheetOrder {
  readonly out: string;
  /** `Head=field,…`, instead of the plan's columns; for sheets. */
  readonly columns?: string;
  readonly withOpenFlags?: boolean;
  /** The school's own OneRoster set, a zip archive or a folder; for sets of marks. */
  readonly school?: string;
  readonly class?: string;
  readonly category?: string;
}

/** A lesson, the day of its hand-in in the school's zone, `2025-05-15`, and what drawing it needs. */
export interface KindInput {
  readonly graded: GradedLesson;
  readonly today: string;
  readonly stills: StillSource;
  readonly job: Job;
}

/** What became of an export. */
export interface KindWriting {
  readonly isWritten: boolean;
  /** Null where the marks were not even counted. */
  readonly check: HandInCheck | null;
  readonly problems: readonly Problem[];
}

/** How marks leave the desk under one word after `--to`: what it must be told, and what it writes. */
export interface ExportKind {
  /** What to say where the options make no sense for it; null where they do. */
  readonly findRefusal: (options: KindOptions) => string | null;
  readonly write: (input: KindInput, options: KindOptions) => Promise<KindWriting>;
}

const csv: ExportKind = {
  findRefusal: findSheetRefusal,
  write: async ({ graded }, options) => {
    const { text, check, problems } = draftSheet(graded, getSheetOrder(options));
    if (text === null) return { isWritten: false, check, problems };
    const written = await writeFileAtomically(path.resolve(options.out), text);
    return { isWritten: written.ok, check, problems: [...problems, ...written.problems] };
  },
};

const xlsx: ExportKind = {
  findRefusal: findSheetRefusal,
  write: async ({ graded }, options) => {
    const { sheet, check, problems } = draftSheet(graded, getSheetOrder(options));
    // A cell of text is text in a workbook: what troubles a CSV troubles nobody here.
    const own = problems.filter(({ code }) => code !== 'sheet-id-formula');
    if (sheet === null) return { isWritten: false, check, problems: own };
    const account = draftAccount(graded, ACCOUNT);
    const { buildWorkbook } = await import('../host/build-workbook.ts');
    const bytes = await buildWorkbook({ marks: sheet, account, names: ACCOUNT.sheets });
    const written = await writeFileAtomically(path.resolve(options.out), bytes);
    return { isWritten: written.ok, check, problems: [...own, ...written.problems] };
  },
};

const pdf: ExportKind = {
  findRefusal: (options) => {
    if (options.columns !== undefined) return 'A printed sheet has columns of its own; leave --columns out.';
    return findBundleRefusal(options) ?? findPaperRefusal(options);
  },
  write: async ({ graded, stills, job }, options) => {
    const parsed = parseSheetOrder('grade-sheet', options);
    if ('wrong' in parsed) return { isWritten: false, check: null, problems: [] };
    const evenWithOpenFlags = options.withOpenFlags === true;
    const draft = draftPaper(graded, parsed.order, { evenWithOpenFlags });
    const place = { file: path.resolve(options.out), stills, names: getLessonNames(graded) };
    const { printSheet } = await import('../host/pdf/print-sheet.ts');
    const printed = await printSheet(draft, place, job);
    return { isWritten: printed.ok, check: draft.check, problems: printed.problems };
  },
};

/** What to say to paper or stills that there are none of; null where the order makes sense. */
export function findPaperRefusal(options: TypedSheetOrder): string | null {
  const parsed = parseSheetOrder('grade-sheet', options);
  if (!('wrong' in parsed)) return null;
  if (parsed.wrong === 'paper') return 'There is no such paper here. Write --paper a4 or letter.';
  return 'Stills are shown, blurred or left out. Write --stills shown, --stills blurred or --stills left-out.';
}

function getSheetOrder({ columns, withOpenFlags }: KindOptions) {
  return {
    evenWithOpenFlags: withOpenFlags === true,
    columns: columns === undefined ? null : parseColumns(columns),
  };
}

function findBundleRefusal({ school, class: classId, category }: KindOptions): string | null {
  if (school === undefined && classId === undefined && category === undefined) return null;
  return '--school, --class and --category go with --to oneroster.';
}

function findPrintRefusal({ paper, grey, stills }: KindOptions): string | null {
  if (paper === undefined && grey === undefined && stills === undefined) return null;
  return '--paper, --grey and --stills go with --to pdf.';
}

/** What goes with another kind alone is refused, so that nobody thinks that it was heeded. */
function findSheetRefusal(options: KindOptions): string | null {
  const refusal = findBundleRefusal(options) ?? findPrintRefusal(options);
  if (refusal) return refusal;
  const { columns } = options;
  if (columns === undefined || parseColumns(columns)) return null;
  return 'The columns make no sense. Write them as "Student ID=pupil,Score=points,Comment=comment".';
}

function buildOneRosterKind(version: '1.1' | '1.2'): ExportKind {
  return {
    findRefusal: ({ school, columns, ...options }) => {
      if (columns !== undefined) return 'A OneRoster set has columns of its own; leave --columns out.';
      if (school !== undefined) return findPrintRefusal(options);
      return 'A OneRoster set needs the school’s own beside it, the one that class lists are taken from. Add --school with its zip archive or folder.';
    },
    write: async ({ graded, today }, options) => {
      const school = await readBundle(path.resolve(options.school ?? ''));
      if (!school.ok) return { isWritten: false, check: null, problems: school.problems };
      const { files, check, problems } = draftBundle(graded, {
        version,
        school: school.value,
        classId: options.class ?? null,
        category: options.category ?? null,
        scoreDate: today,
        evenWithOpenFlags: options.withOpenFlags === true,
      });
      if (files === null) return { isWritten: false, check, problems };
      const written = await writeBundle(path.resolve(options.out), files);
      return { isWritten: written.ok, check, problems: [...problems, ...written.problems] };
    },
  };
}

/** Every kind of export, by its word. */
export const EXPORT_KINDS: Readonly<Record<ExportWord, ExportKind>> = {
  csv,
  xlsx,
  pdf,
  oneroster: buildOneRosterKind('1.2'),
  'oneroster-1.1': buildOneRosterKind('1.1'),
};
