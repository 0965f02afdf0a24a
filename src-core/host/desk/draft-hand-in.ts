import { createHash } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { draftBundle } from '../../app/export-bundle.ts';
import { checkGraded, draftAccount, draftSheet, type HandInCheck } from '../../app/export-sheet.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import type { CheckedInput } from '../../contract/calls.ts';
import type { HandInPreview, SetFileView } from '../../contract/hand-in-view.ts';
import type { Problem } from '../../contract/problem.ts';
import { buildWorkbook } from '../build-workbook.ts';
import { readBundle } from '../read-bundle.ts';
import { buildBundleArchive } from '../write-bundle.ts';

/** What is to be handed in, as a face asks for it. */
export type HandInOrder = Pick<CheckedInput<'draftHandIn'>, 'what' | 'evenWithOpenFlags'>;

/** A hand-in ready to be written. */
export interface HandInDraft {
  /** Null where flags refused it. */
  readonly preview: HandInPreview | null;
  readonly check: HandInCheck;
  readonly problems: readonly Problem[];
  /** What goes into the file; null: refused. */
  readonly content: {
    /** Stands for just this content. */
    readonly id: string;
    readonly build: () => Promise<string | Uint8Array>;
  } | null;
}

/** What a hand-in is made from: the lesson, the day in the school's zone, and where the school's set lies. */
export interface HandInSource {
  readonly graded: GradedLesson;
  /** `2025-05-15`. */
  readonly today: string;
  /** Null: not chosen, or not known any more. */
  readonly schoolPlace: string | null;
}

/** How a hand-in of each kind ends its file's name. */
export const HAND_IN_ENDINGS: Readonly<Record<HandInOrder['what']['kind'], string>> = {
  csv: '.csv',
  xlsx: '.xlsx',
  oneroster: '.zip',
};

/** Drafts a hand-in of any kind; nothing is written. */
export function draftHandIn(source: HandInSource, { what, ...order }: HandInOrder): Promise<HandInDraft> {
  if (what.kind === 'oneroster') return draftSet(source, { ...order, what });
  return Promise.resolve(
    what.kind === 'csv'
      ? draftCsv(source, { ...order, columns: what.columns })
      : draftWorkbook(source, { ...order, columns: what.columns }),
  );
}

type SheetOrder = Parameters<typeof draftSheet>[1];

function draftCsv({ graded }: HandInSource, order: SheetOrder): HandInDraft {
  const { text, sheet, check, problems } = draftSheet(graded, order);
  if (text === null || sheet === null) return { preview: null, check, problems, content: null };
  const content = { id: getId(text), build: async () => text };
  return { preview: { kind: 'csv', sheet, text }, check, problems, content };
}

function draftWorkbook({ graded }: HandInSource, order: SheetOrder): HandInDraft {
  const { sheet, check, problems } = draftSheet(graded, order);
  // A cell of text is text in a workbook: what troubles a CSV troubles nobody here.
  const own = problems.filter(({ code }) => code !== 'sheet-id-formula');
  if (sheet === null) return { preview: null, check, problems: own, content: null };
  const account = draftAccount(graded, ACCOUNT);
  const build = () => buildWorkbook({ marks: sheet, account, names: ACCOUNT.sheets });
  const content = { id: getId(JSON.stringify([sheet, account])), build };
  return { preview: { kind: 'xlsx', sheet, account }, check, problems: own, content };
}

type SetOrder = Omit<HandInOrder, 'what'> & {
  readonly what: Extract<HandInOrder['what'], { kind: 'oneroster' }>;
};

async function draftSet(
  { graded, today, schoolPlace }: HandInSource,
  { what, evenWithOpenFlags }: SetOrder,
): Promise<HandInDraft> {
  const check = checkGraded(graded, evenWithOpenFlags);
  const nothing: HandInPreview = { kind: 'oneroster', files: null, rules: null, school: null };
  if (schoolPlace === null) {
    return { preview: nothing, check, problems: [{ code: 'bundle-school-missing' }], content: null };
  }
  const school = await readBundle(await findSet(schoolPlace));
  if (!school.ok) return { preview: nothing, check, problems: school.problems, content: null };
  const { version, classId, category } = what;
  const order = { version, classId, category, school: school.value, scoreDate: today, evenWithOpenFlags };
  const draft = draftBundle(graded, order);
  const { files } = draft;
  const described = draft.school && { ...draft.school, name: school.value.name };
  return {
    preview: { ...nothing, files: files && listFiles(files), rules: draft.rules, school: described },
    check: draft.check,
    problems: draft.problems,
    content: files && {
      id: getId(JSON.stringify([...files])),
      build: async () => buildBundleArchive(files),
    },
  };
}

/** A folder that holds one zip archive and nothing else, as an upload leaves it, stands for the archive. */
async function findSet(place: string): Promise<string> {
  const names = (await readdir(place).catch(() => [])).filter((name) => !name.startsWith('.'));
  const [only, ...others] = names;
  return only?.endsWith('.zip') && others.length === 0 ? path.join(place, only) : place;
}

function listFiles(files: ReadonlyMap<string, string>): readonly SetFileView[] {
  return [...files].map(([name, text]) => ({ name, rows: countRecords(text), text }));
}

/** Records after the heading: line ends that stand within quotes are part of a text. */
function countRecords(text: string): number {
  const outside = text.replace(/"[^"]*"/g, '').trimEnd();
  return outside.split('\n').length - 1;
}

function getId(content: string): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 32);
}
