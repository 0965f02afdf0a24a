import { SHEET_NAMES } from '../../../renderer/text/english/grade-paper.ts';
import type { Names } from '../../../renderer/text/names.ts';
import type { StopSignal } from '../../app/ports.ts';
import type { PaperDraft } from '../../app/print-sheet.ts';
import type { Progress } from '../../contract/progress.ts';
import type { HandInProblem } from '../../gradebook/hand-in-check.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import type { GradePages } from '../../printing/grade-pages.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import { drawPages } from './draw-pages.ts';
import type { Layout } from './marks.ts';
import { layOutClassGrades } from './pages/class-grade-pages.ts';
import { layOutSlips } from './pages/slip-pages.ts';
import { layOutSquadGrades } from './pages/squad-grade-pages.ts';
import { readSheetStills, type StillSource } from './sheet-stills.ts';
import { writePdf } from './write-pdf.ts';

type SheetProblem = PrintProblem | StorageProblem | HandInProblem;

/** How long work may be seen and stopped. */
interface PrintJob {
  readonly signal: StopSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** What a sheet is printed with: the file it is written to, whole or not at all, and where stills and names come from. */
export interface SheetPlace {
  readonly file: string;
  readonly stills: StillSource;
  readonly names: Names;
}

/** Draws a sheet and writes it over whatever has its name. Fails where it was refused or holds no page. */
export async function printSheet(
  draft: PaperDraft,
  place: SheetPlace,
  job: PrintJob,
): Promise<Outcome<{ readonly pageCount: number }, SheetProblem>> {
  const { pages, order, plan } = draft;
  if (pages === null) return fail<SheetProblem>(...draft.problems);
  const laid =
    'classPage' in pages
      ? await layOutGrades(draft, { ...place, pages }, job)
      : { layouts: layOutSlips(pages, plan), problems: [] };
  job.onProgress({ step: 'print', done: 0, total: 1 });
  const title = `${SHEET_NAMES[order.kind].title}: ${plan.lesson.title}, ${plan.lesson.className}`;
  const drawn = await drawPages(laid.layouts, { paper: order.paper, title });
  const problems: SheetProblem[] = [...laid.problems, ...drawn.problems];
  if (drawn.pageCount === 0) return fail<SheetProblem>(...problems, { code: 'print-empty' });
  const written = await writePdf(place.file, drawn.bytes);
  return written.ok
    ? succeed({ pageCount: drawn.pageCount }, problems)
    : fail(...written.problems, ...problems);
}

async function layOutGrades(
  { order, plan }: PaperDraft,
  { pages, stills, names }: SheetPlace & { readonly pages: GradePages },
  job: PrintJob,
): Promise<{ readonly layouts: readonly Layout[]; readonly problems: readonly PrintProblem[] }> {
  const { pictures, problems } = await readSheetStills(
    pages.squads,
    { source: stills, isGrey: order.isGrey },
    job,
  );
  // Folders of clips say nothing that the page does not.
  const clip = (id: string) => names.clip(id).split('/').at(-1) ?? id;
  const style = { plan, names: { ...names, clip }, pictures };
  return {
    layouts: [
      ...layOutClassGrades(pages.classPage),
      ...pages.squads.flatMap((page) => layOutSquadGrades(page, style)),
    ],
    problems,
  };
}
