import PDFDocument from 'pdfkit';
import { buildQrPath, buildQrSymbol } from '../../platform/qr-symbol.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import { fitText, MM } from './fit-text.ts';
import { BLOCK, type Box, type Layout, type Mark } from './marks.ts';
import { type Hand, measureRun, type Run, setText } from './paper-fonts.ts';

/** Sizes of paper in points. */
const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;

const INK = '#000000';

/** Outline of a pinnie, on 20 by 24. */
const BIB = 'M3 1.5H7.2C7.6 4.6 12.4 4.6 12.8 1.5H17V6.5L18.8 10V22.5H1.2V10L3 6.5Z';

/** A tick and a cross, on 10 by 10. */
const SIGNS = { tick: 'M2 5.4L4.3 7.8L8.2 2.4', cross: 'M2.4 2.4L7.6 7.6M7.6 2.4L2.4 7.6' } as const;

/** A pinnie's edge at most, in points; smaller ones have a finer edge. */
const BIB_EDGE_PT = 1.8;

type Pdf = PDFKit.PDFDocument;

/** A drawn document, and what could not be set. */
export interface DrawnPages {
  readonly bytes: Uint8Array;
  readonly pageCount: number;
  readonly problems: readonly PrintProblem[];
}

/**
 * Draws pages into a PDF with its fonts in it. A page with a text that does not fit is left out, and a text with
 * letters that no font has becomes a line to write on; both are problems. Nothing is ever cut.
 */
export async function drawPages(
  layouts: readonly Layout[],
  { paper, title }: { readonly paper: keyof typeof PAPERS; readonly title: string },
): Promise<DrawnPages> {
  const [width, height] = PAPERS[paper];
  const info = { Title: title, Creator: 'Routemark', Producer: 'Routemark' };
  // `font: ''` keeps the document from naming a font of the reader's own.
  const pdf = new PDFDocument({
    autoFirstPage: false,
    size: [width, height],
    margin: 0,
    font: '',
    lang: 'en',
    info,
  });
  const chunks: Buffer[] = [];
  const ended = new Promise<void>((resolve) =>
    pdf.on('data', (chunk) => chunks.push(chunk)).on('end', resolve),
  );
  const problems: PrintProblem[] = [];
  let pageCount = 0;
  for (const { marks } of layouts) {
    const found = marks.flatMap(findTextProblem);
    problems.push(...found);
    if (found.some(({ code }) => code === 'print-text-too-long')) continue;
    pdf.addPage();
    pageCount++;
    pdf.translate((width - BLOCK.w * MM) / 2, (height - BLOCK.h * MM) / 2);
    for (const mark of marks) drawMark(pdf, mark);
  }
  pdf.end();
  await ended;
  return { bytes: Buffer.concat(chunks), pageCount, problems };
}

function findTextProblem(mark: Mark): PrintProblem[] {
  if (mark.kind !== 'text') return [];
  const { said, setting } = mark;
  const { missing } = setText(said.text.replace(/\s+/g, ' '), setting.hand);
  if (missing !== '') return [{ code: 'print-letters-missing', field: said.field, letters: missing }];
  if (fitText(said.text, { widthMm: mark.box.w, heightMm: mark.box.h }, setting)) return [];
  return [{ code: 'print-text-too-long', field: said.field, text: said.text }];
}

type MarkOf<Kind extends Mark['kind']> = Extract<Mark, { readonly kind: Kind }>;

const DRAWN: { readonly [Kind in Mark['kind']]: (pdf: Pdf, mark: MarkOf<Kind>) => void } = {
  text: drawText,
  rule: (pdf, { box, isDashed }) => drawRule(pdf, box, isDashed),
  frame: drawFrame,
  plate: drawPlate,
  ring: drawRing,
  bib: drawBib,
  paper: (pdf, { box }) => traceSlip(pdf, box, 0).fill('#ffffff'),
  sign: drawSign,
  thread: drawThread,
  picture: drawPicture,
  code: drawCode,
};

function drawMark<Kind extends Mark['kind']>(pdf: Pdf, mark: MarkOf<Kind>): void {
  const draw = DRAWN[mark.kind as Kind];
  pdf.save();
  draw(pdf, mark);
  pdf.restore();
}

function drawText(pdf: Pdf, { box, said, setting, align, stand, isWhite }: MarkOf<'text'>): void {
  const { missing } = setText(said.text.replace(/\s+/g, ' '), setting.hand);
  if (missing !== '') drawRule(pdf, { ...box, y: box.y + Math.min(box.h, 7) - 0.4, h: 0.25 }, false);
  const fitted = fitText(said.text, { widthMm: box.w, heightMm: box.h }, setting);
  if (missing !== '' || !fitted) return;
  const free = box.h - fitted.heightMm;
  const top = box.y + (stand === 'top' ? 0 : stand === 'middle' ? free / 2 : free);
  fitted.lines.forEach((line, at) => {
    const baseline = top * MM + fitted.size * (setting.leading * at + (setting.leading + 0.55) / 2);
    const width = line.reduce((sum, run) => sum + measureRun(run), 0) * fitted.size;
    const shift = { left: 0, centre: (box.w * MM - width) / 2, right: box.w * MM - width }[align];
    drawLine(pdf, line, {
      x: box.x * MM + shift,
      baseline,
      size: fitted.size,
      colour: isWhite ? '#ffffff' : INK,
    });
  });
}

function drawLine(
  pdf: Pdf,
  line: readonly Run[],
  at: { readonly x: number; readonly baseline: number; readonly size: number; readonly colour: string },
): void {
  let { x } = at;
  for (const run of line) {
    pdf
      .registerFont(run.face.name, run.face.bytes)
      .font(run.face.name)
      .fontSize(at.size)
      .fillColor(at.colour);
    pdf.text(run.text, x, at.baseline, { lineBreak: false, baseline: 'alphabetic' });
    x += measureRun(run) * at.size;
  }
}

/** One line of letters in the middle of a box, its capitals' height in the middle. */
function drawLetters(
  pdf: Pdf,
  letters: string,
  look: { readonly box: Box; readonly hand: Hand; readonly sizeMm: number; readonly colour: string },
): void {
  const { runs } = setText(letters, look.hand);
  const size = look.sizeMm * MM;
  const width = runs.reduce((sum, run) => sum + measureRun(run), 0) * size;
  const x = (look.box.x + look.box.w / 2) * MM - width / 2;
  const baseline = (look.box.y + look.box.h / 2) * MM + size * 0.31;
  drawLine(pdf, runs, { x, baseline, size, colour: look.colour });
}

function drawRule(pdf: Pdf, { x, y, w, h }: Box, isDashed: boolean): void {
  if (isDashed) pdf.dash(1.4 * MM, { space: 1 * MM });
  const middle = (y + h / 2) * MM;
  pdf
    .lineWidth(h * MM)
    .moveTo(x * MM, middle)
    .lineTo((x + w) * MM, middle)
    .stroke(INK);
}

function drawFrame(pdf: Pdf, { box, cutMm, lineMm, isDashed = false }: MarkOf<'frame'>): void {
  if (isDashed) pdf.dash(0.9 * MM, { space: 0.6 * MM });
  traceSlip(pdf, box, cutMm)
    .lineWidth(lineMm * MM)
    .stroke(INK);
}

function traceSlip(pdf: Pdf, { x, y, w, h }: Box, cutMm: number): Pdf {
  const corners = [
    [x, y],
    [x + w, y],
    [x + w, y + h - cutMm],
    [x + w - cutMm, y + h],
    [x, y + h],
  ] as const;
  return pdf.polygon(...corners.map(([left, top]) => [left * MM, top * MM]));
}

function drawPlate(pdf: Pdf, { box, letter, cutMm }: MarkOf<'plate'>): void {
  traceSlip(pdf, box, cutMm).fill(INK);
  // Up to three letters: narrower ones would be a third as wide.
  const sizeMm = Math.min(box.h * 0.95, (box.w * 1.15) / [...letter].length);
  drawLetters(pdf, letter, { box, hand: 'serif', sizeMm, colour: '#ffffff' });
}

function drawRing(pdf: Pdf, { box, text }: MarkOf<'ring'>): void {
  const radius = (Math.min(box.w, box.h) / 2) * MM;
  pdf
    .circle((box.x + box.w / 2) * MM, (box.y + box.h / 2) * MM, radius)
    .lineWidth(0.35 * MM)
    .stroke(INK);
  drawLetters(pdf, text, { box, hand: 'sans-bold', sizeMm: box.h * 0.62, colour: INK });
}

function drawBib(pdf: Pdf, { box, squad }: MarkOf<'bib'>): void {
  const scale = Math.min(box.w / 20, box.h / 24) * MM;
  pdf.translate(box.x * MM, box.y * MM).scale(scale);
  pdf.save();
  pdf.path(BIB).clip();
  pdf.rect(0, 0, 20, 24).fill(squad.colour);
  const { lines, solids, width = 1.5 } = squad.pattern;
  if (lines) pdf.path(lines).lineWidth(width).stroke(squad.tone);
  if (solids) pdf.path(solids).fill(squad.tone);
  pdf.restore();
  pdf
    .path(BIB)
    .lineWidth(Math.min(1.5, BIB_EDGE_PT / scale))
    .lineJoin('round')
    .stroke(INK);
}

function drawSign(pdf: Pdf, { box, shape, isWhite }: MarkOf<'sign'>): void {
  pdf.translate(box.x * MM, box.y * MM).scale((box.w * MM) / 10, (box.h * MM) / 10);
  pdf
    .path(SIGNS[shape])
    .lineWidth(1.5)
    .stroke(isWhite ? '#ffffff' : INK);
}

function drawThread(pdf: Pdf, { box, fromMm, toMm, lineMm }: MarkOf<'thread'>): void {
  const [left, right] = [box.x * MM, (box.x + box.w) * MM];
  const [from, to] = [(box.y + fromMm) * MM, (box.y + toMm) * MM];
  const middle = (left + right) / 2;
  pdf
    .moveTo(left, from)
    .bezierCurveTo(middle, from, middle, to, right, to)
    .lineWidth(lineMm * MM)
    .stroke(INK);
}

function drawPicture(pdf: Pdf, { box, jpeg }: MarkOf<'picture'>): void {
  pdf.image(Buffer.from(jpeg), box.x * MM, box.y * MM, { width: box.w * MM, height: box.h * MM });
}

/** Width of a JPEG by its height; null where it is none that can be drawn. */
export function findAspect(jpeg: Uint8Array): number | null {
  // Its types leave this part of pdfkit's own mixin of pictures out.
  const opener = new PDFDocument({ autoFirstPage: false, font: '' }) as Pdf & {
    openImage(bytes: Buffer): { readonly width: number; readonly height: number };
  };
  try {
    const { width, height } = opener.openImage(Buffer.from(jpeg));
    return width > 0 && height > 0 ? width / height : null;
  } catch {
    return null;
  }
}

function drawCode(pdf: Pdf, { box, code }: MarkOf<'code'>): void {
  const symbol = buildQrSymbol(code.text, code.level);
  pdf.translate(box.x * MM, box.y * MM).scale((box.w * MM) / symbol.size);
  pdf.path(buildQrPath(symbol)).fill(INK);
}
