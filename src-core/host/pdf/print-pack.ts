import { stat } from 'node:fs/promises';
import path from 'node:path';
import { PACK_NAMES } from '../../../renderer/text/english/paper.ts';
import type { StopSignal } from '../../app/ports.ts';
import type { PackDraft } from '../../app/print-pack.ts';
import type { CallProblem } from '../../contract/call-problem.ts';
import type { Progress } from '../../contract/progress.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import { type DrawnPages, drawPages } from './draw-pages.ts';
import { readPackPhotos } from './pack-photos.ts';
import { layOutPage } from './pages/lay-out-page.ts';
import { writePdf } from './write-pdf.ts';

/** Where a pack is written, and where its pictures are. */
export interface PackPlace {
  /** Where the lesson's reference photos lie, below its `photos`. */
  readonly lessonFolder: string;
  /** One file for all parts, or a folder that gets a file for each part. It is made where it is not there. */
  readonly file?: string;
  readonly folder?: string;
  /** Whether files of those names are replaced. */
  readonly replace: boolean;
}

/** What was written, and how much of it. */
export interface PrintedPack {
  /** Absolute, or from where the program runs, as they were asked for. */
  readonly paths: string[];
  readonly pageCount: number;
}

type PackProblem = PrintProblem | StorageProblem | Extract<CallProblem, { code: 'file-exists' }>;

/** How long work may be seen and stopped. */
interface PrintJob {
  readonly signal: StopSignal;
  readonly onProgress: (progress: Progress) => void;
}

/**
 * Draws a pack and writes it. Nothing is written where a file of such a name is there and not to be replaced, or where
 * no page could be laid out; each file is written whole or not at all.
 */
export async function printPack(
  draft: PackDraft,
  place: PackPlace,
  job: PrintJob,
): Promise<Outcome<PrintedPack, PackProblem>> {
  const files = nameFiles(draft, place);
  const standing = await findStanding(files.map(({ file }) => file));
  const first = standing[0];
  if (first !== undefined && !place.replace) return fail({ code: 'file-exists', path: first });
  const { isGrey } = draft;
  const pictured = await readPackPhotos(draft.sections, { lessonFolder: place.lessonFolder, isGrey });
  const drawn: { readonly file: string; readonly pages: DrawnPages }[] = [];
  for (const { file, sections } of files) {
    job.signal.throwIfAborted();
    job.onProgress({ step: 'print', done: drawn.length, total: files.length });
    const layouts = sections.flatMap(({ pages }) =>
      pages.flatMap((page) => layOutPage(page, pictured.photos)),
    );
    const title = sections.length === 1 && sections[0] ? PACK_NAMES[sections[0].part].title : draft.title;
    drawn.push({ file, pages: await drawPages(layouts, { paper: draft.paper, title }) });
  }
  const problems = [...draft.problems, ...pictured.problems, ...drawn.flatMap(({ pages }) => pages.problems)];
  const filled = drawn.filter(({ pages }) => pages.pageCount > 0);
  if (filled.length === 0) return fail<PackProblem>(...problems, { code: 'print-empty' });
  for (const { file, pages } of filled) {
    const written = await writePdf(file, pages.bytes);
    if (!written.ok) return fail<PackProblem>(...written.problems, ...problems);
  }
  const pageCount = filled.reduce((sum, { pages }) => sum + pages.pageCount, 0);
  return succeed<PrintedPack, PackProblem>({ paths: filled.map(({ file }) => file), pageCount }, problems);
}

function nameFiles({ sections }: PackDraft, { file, folder = '' }: PackPlace) {
  if (file !== undefined) return [{ file, sections }];
  return sections.map((section) => ({
    file: path.join(folder, `${PACK_NAMES[section.part].file}.pdf`),
    sections: [section],
  }));
}

async function findStanding(files: readonly string[]): Promise<readonly string[]> {
  const found = await Promise.all(files.map((file) => stat(file).catch(() => null)));
  return files.filter((_, at) => found[at] !== null);
}
