import { execFile, execFileSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { readBarcodes } from 'zxing-wasm/reader';
import type { LumaFrame } from '../../src-core/evidence/luma-frame.ts';
import { readCodes } from '../../src-core/host/card-reader.ts';

const run = promisify(execFile);

const POINTS_PER_MM = 72 / 25.4;

/** Sizes of paper in points: ISO 216, and ANSI/ASME Y14.1. */
export const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;

/** Whether Debian's poppler-utils and zbar-tools are here; where they are not, says so once on standard error. */
export function canReadPaper(): boolean {
  const missing = ['pdftoppm', 'pdftotext', 'pdffonts', 'pdfinfo', 'pdfimages', 'zbarimg'].filter(
    (tool) => !isHere(tool),
  );
  if (missing.length > 0) process.stderr.write(`Skipped: no ${missing.join(', ')} here.\n`);
  return missing.length === 0;
}

function isHere(tool: string): boolean {
  try {
    execFileSync(tool, [tool === 'zbarimg' ? '--version' : '-v'], { stdio: 'ignore' });
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ENOENT';
  }
}

/** One page rendered by poppler. */
export interface PaperPage extends LumaFrame {
  /** The picture as a file, for readers that are programs. */
  readonly file: string;
}

/** Renders the pages of a PDF in grey, into a folder that `dispose` removes. */
export async function renderPages(
  pdf: string,
  dotsPerInch: number,
): Promise<{ readonly pages: readonly PaperPage[]; readonly dispose: () => Promise<void> }> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-paper-'));
  await run('pdftoppm', ['-gray', '-r', String(dotsPerInch), pdf, path.join(folder, 'p')]);
  const names = (await readdir(folder)).sort();
  const pages = await Promise.all(
    names.map(async (name): Promise<PaperPage> => {
      const file = path.join(folder, name);
      return { file, atSeconds: 0, ...readNetpbm(await readFile(file)) };
    }),
  );
  return { pages, dispose: () => rm(folder, { recursive: true, force: true }) };
}

/** The samples of a binary PGM or PPM file. */
export function readNetpbm(bytes: Buffer): { width: number; height: number; luma: Uint8Array } {
  const head = /^P[56]\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString('latin1'));
  if (!head) throw new Error('not a picture of pdftoppm');
  return {
    width: Number(head[1]),
    height: Number(head[2]),
    luma: new Uint8Array(bytes.subarray(head[0].length)),
  };
}

/** The codes of each picture as zbar, which is not our reader, sees them; in order of the pictures. */
export async function readWithZbar(files: readonly string[]): Promise<readonly (readonly string[])[]> {
  const args = ['--quiet', '--xml', '-Sdisable', '-Sqrcode.enable', ...files];
  // Exit 4 says that a picture had no code, which the caller will see.
  const { stdout } = await run('zbarimg', args, { maxBuffer: 1 << 26 }).catch((error) => error);
  const sources = String(stdout).split('<source ').slice(1);
  const byFile = new Map(sources.map((source) => [/href='([^']*)'/.exec(source)?.[1], source]));
  return files.map((file) =>
    [...(byFile.get(file) ?? '').matchAll(/<!\[CDATA\[(.*?)\]\]>/gs)].map(([, text = '']) => text),
  );
}

/** Where a code stands in a picture, in pixels. */
export interface CodePlace {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** Finds the one code of a page, which stands upright. */
export async function findCode(page: PaperPage): Promise<CodePlace> {
  await readCodes(page);
  const [found] = await readBarcodes(new Uint8Array(await readFile(page.file)), { formats: ['QRCode'] });
  if (!found) throw new Error('a page without a code');
  const { topLeft, bottomRight } = found.position;
  return { left: topLeft.x, top: topLeft.y, width: bottomRight.x - topLeft.x };
}

/** A word on paper, in points from the page's upper left corner. */
export interface PaperWord {
  readonly text: string;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

/** The words of each page as poppler finds them, with the page's size in points. */
export async function readWords(
  pdf: string,
): Promise<
  readonly { readonly width: number; readonly height: number; readonly words: readonly PaperWord[] }[]
> {
  const { stdout } = await run('pdftotext', ['-bbox', pdf, '-'], { maxBuffer: 1 << 26 });
  return stdout
    .split('<page ')
    .slice(1)
    .map((page) => ({
      width: Number(/width="([\d.]+)"/.exec(page)?.[1]),
      height: Number(/height="([\d.]+)"/.exec(page)?.[1]),
      words: [
        ...page.matchAll(
          /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g,
        ),
      ].map(([, left, top, right, bottom, text = '']) => ({
        text: text
          .replace(/&amp;/g, '&')
          .replace(/&quot;/g, '"')
          .replace(/&lt;/g, '<')
          .replace(/&gt;/g, '>'),
        box: [Number(left), Number(top), Number(right), Number(bottom)] as const,
      })),
    }));
}

/** All text of a PDF, spaces and lines made one space. */
export async function readText(pdf: string): Promise<string> {
  const { stdout } = await run('pdftotext', [pdf, '-'], { maxBuffer: 1 << 26 });
  return stdout.replace(/\s+/g, ' ');
}

/** The pages, from 1, of the pictures that poppler finds in a PDF, in their order. */
export async function listPictures(pdf: string): Promise<readonly number[]> {
  const { stdout } = await run('pdfimages', ['-list', pdf]);
  return stdout
    .trim()
    .split('\n')
    .slice(2)
    .map((row) => Number(row.trim().split(/\s+/)[0]));
}

/** What poppler says of a PDF's fonts: a line each, name first. */
export async function readFonts(
  pdf: string,
): Promise<readonly { readonly name: string; readonly isEmbedded: boolean }[]> {
  const { stdout } = await run('pdffonts', [pdf]);
  const [, line = '', ...rows] = stdout.trim().split('\n');
  const embedded = line.split(' ').slice(0, 3).join(' ').length;
  return rows.map((row) => ({
    name: row.slice(0, 36).trim(),
    isEmbedded: row.slice(embedded).trim().startsWith('yes'),
  }));
}

/** Whether any pixel of any page has a colour, rendered at few dots. */
export async function hasColour(pdf: string): Promise<boolean> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-paper-'));
  await run('pdftoppm', ['-r', '30', pdf, path.join(folder, 'p')]);
  const pages = await Promise.all((await readdir(folder)).map((name) => readFile(path.join(folder, name))));
  await rm(folder, { recursive: true, force: true });
  return pages.some((bytes) => {
    const { luma } = readNetpbm(bytes);
    for (let at = 0; at + 2 < luma.length; at += 3) {
      if (luma[at] !== luma[at + 1] || luma[at] !== luma[at + 2]) return true;
    }
    return false;
  });
}

/**
 * Words that reach out of the block of 190 by 259 mm in the middle of the page. A word's box is as high as its font
 * allows, a quarter more than its letters are.
 */
export function findOutside(words: readonly PaperWord[], width: number, height: number) {
  const side = (width - 190 * POINTS_PER_MM) / 2 - 1;
  const top = (height - 259 * POINTS_PER_MM) / 2 - 1;
  return words.filter(({ box: [left, up, right, down] }) => {
    const spare = (down - up) / 4;
    return left < side || up + spare < top || right > width - side || down - spare > height - top;
  });
}

/** Words that cover each other by more than lines set close do. */
export function findOnTop(words: readonly PaperWord[]): string[] {
  return words.flatMap((one, at) =>
    words.slice(at + 1).flatMap((other) => {
      const across = Math.min(one.box[2], other.box[2]) - Math.max(one.box[0], other.box[0]);
      const [here, there] = [getLetters(one.box), getLetters(other.box)];
      const down = Math.min(here[1], there[1]) - Math.max(here[0], there[0]);
      return across > 0.5 && down > 0.5 ? [`${one.text} / ${other.text}`] : [];
    }),
  );
}

/** From capitals' tops to the line they stand on, about: a word's box reaches further both ways. */
function getLetters([, up, , down]: readonly [number, number, number, number]): readonly [number, number] {
  return [up + (down - up) * 0.3, down - (down - up) * 0.3];
}

/** Pages with anything at all printed outside the block, a hair's breadth of its edge aside. */
export async function findInkInMargins(
  file: string,
  [wide, high]: readonly [number, number],
): Promise<number[]> {
  const { pages, dispose } = await renderPages(file, 36);
  const marked = pages.flatMap(({ width, height, luma }, page) => {
    const side = Math.floor(((wide - 190 * POINTS_PER_MM) / 2) * 0.5) - 1;
    const top = Math.floor(((high - 259 * POINTS_PER_MM) / 2) * 0.5) - 1;
    const isMargin = (at: number) => {
      const [x, y] = [at % width, Math.floor(at / width)];
      return x < side || y < top || x >= width - side || y >= height - top;
    };
    return luma.some((level, at) => level < 250 && isMargin(at)) ? [page + 1] : [];
  });
  await dispose();
  return marked;
}
