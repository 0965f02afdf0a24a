import { execFile } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { GRADES } from '../../renderer/text/english/grade-paper.ts';
import { draftPaper } from '../../src-core/app/print-sheet.ts';
import { stillsAnalyser } from '../../src-core/host/analysers.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { getLessonNames } from '../../src-core/host/lesson-names.ts';
import { printSheet } from '../../src-core/host/pdf/print-sheet.ts';
import type { SheetOrder } from '../../src-core/printing/sheet-order.ts';
import { type CrowdedClass, ON_LIST, openCrowdedClass } from './crowded-class.ts';
import {
  canReadPaper,
  findInkInMargins,
  findOnTop,
  findOutside,
  hasColour,
  PAPERS,
  readFonts,
  readNetpbm,
  readText,
  readWords,
} from './paper.ts';

const A4: SheetOrder = { kind: 'grade-sheet', paper: 'a4', isGrey: false, stills: 'shown' };
const LETTER: SheetOrder = { ...A4, paper: 'letter', isGrey: true, stills: 'blurred' };
const run = promisify(execFile);

describe.skipIf(!canReadPaper())('forty-five pupils and sixty clips on paper', () => {
  let crowd: CrowdedClass;
  let folder = '';
  /** The two grade sheets, each printed once for all tests. */
  const sheets = new Map<SheetOrder, string>();

  beforeAll(async () => {
    crowd = await openCrowdedClass();
    folder = await mkdtemp(path.join(tmpdir(), 'routemark-sheets-'));
    for (const order of [A4, LETTER]) sheets.set(order, await print(order));
  }, 240_000);

  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
    await crowd.dispose();
  });

  async function print(order: SheetOrder): Promise<string> {
    const { graded, ports } = crowd;
    const file = path.join(folder, `${Object.values(order).join('-')}.pdf`);
    const stills = { findFile: () => null, readStrip: ports.readStrip };
    const job = { signal: new AbortController().signal, onProgress: () => {} };
    const draft = draftPaper(graded, order, { evenWithOpenFlags: true });
    const printed = await printSheet(draft, { file, stills, names: getLessonNames(graded) }, job);
    expect(printed.problems).toEqual([]);
    return file;
  }

  const getSheet = (order: SheetOrder) => sheets.get(order) ?? '';

  test.each([
    ['A4 in colour', A4],
    ['Letter in grey', LETTER],
  ] as const)(
    'on %s is a class page and a page a squad, all inside the margins, nothing on anything else',
    async (_, order) => {
      const file = getSheet(order);
      const pages = await readWords(file);
      expect(pages).toHaveLength(1 + crowd.graded.squads.length);
      for (const { width, height, words } of pages) {
        expect([width, height].map(Math.round)).toEqual(PAPERS[order.paper].map(Math.round));
        expect(findOutside(words, width, height)).toEqual([]);
        expect(findOnTop(words)).toEqual([]);
      }
      expect(await findInkInMargins(file, PAPERS[order.paper])).toEqual([]);
      expect(await hasColour(file)).toBe(!order.isGrey);
      expect((await readFonts(file)).filter(({ isEmbedded }) => !isEmbedded)).toEqual([]);
    },
  );

  test('says every pupil’s name, Greek, Cyrillic and Vietnamese among them, and every flag with its answer', async () => {
    const said = await readText(getSheet(A4));
    const { pupils } = crowd.graded.lesson;
    const names = pupils.map(({ given, family }) => `${given} ${family}`);
    expect(names).toContain('Наталья Kelpington-2');
    expect(names.filter((name) => !said.includes(name))).toEqual([]);
    expect(said).toContain('Out of order');
    expect(said).toContain('Kept: They went on too early.');
    expect(said).toContain(GRADES.notFinal);
  });

  test('has a still a rep, and none on the page of the squad with somebody on the do-not-film list', async () => {
    const perPage = await countPictures(getSheet(A4));
    const squads = crowd.graded.lesson.plan.squads.map(({ name }) => name);
    const hidden = 1 + squads.indexOf(ON_LIST.squad);
    const reps = 20 * 10;
    expect(perPage).toEqual([0, ...squads.map((name) => (name === ON_LIST.squad ? 0 : reps))]);
    const page = await readPage(getSheet(A4), hidden + 1);
    expect(page).toContain(GRADES.onList);
    expect(page.split(ON_LIST.name)).toHaveLength(2);
  });

  test('holds the kept stills where they are shown, and nothing as sharp where they are blurred', async () => {
    const shown = await readFile(getSheet(A4));
    const blurred = await readFile(getSheet(LETTER));
    const stills = await listKeptStills(crowd.folder);
    expect(stills.filter((jpeg) => shown.includes(jpeg)).length).toBeGreaterThan(0);
    expect(stills.filter((jpeg) => blurred.includes(jpeg))).toEqual([]);
    // Sixteen pixels drawn out to 128: from black to white takes eight steps, where a sharp edge takes one or two.
    expect(await findSharpestStep(getSheet(A4))).toBeGreaterThan(100);
    expect(await findSharpestStep(getSheet(LETTER))).toBeLessThan(50);
  });

  test('gives each squad a page of what went well and what to do next, whole', async () => {
    const file = await print({ ...A4, kind: 'squad-slips', stills: 'left-out' });
    const pages = await readWords(file);
    expect(pages).toHaveLength(crowd.graded.squads.length);
    for (const { width, height, words } of pages) {
      expect(findOutside(words, width, height)).toEqual([]);
      expect(findOnTop(words)).toEqual([]);
    }
    const said = await readText(file);
    const missing = crowd.graded.lesson.plan.squads.filter(({ name }) => !said.includes(name));
    expect(missing).toEqual([]);
    expect(said).toContain('What to do next');
  });

  test('gives each pupil a slip to cut out, whole and without a number', async () => {
    const file = await print({ ...LETTER, kind: 'pupil-slips', stills: 'left-out' });
    const pages = await readWords(file);
    expect(pages).toHaveLength(12);
    for (const { width, height, words } of pages) {
      expect(findOutside(words, width, height)).toEqual([]);
      expect(findOnTop(words)).toEqual([]);
    }
    const said = await readText(file);
    const { pupils } = crowd.graded.lesson;
    const own = pupils.map(({ given, squad }) => [given, squad].join());
    const called = pupils.map(({ given, family, squad }) =>
      own.filter((one) => one === [given, squad].join()).length > 1 ? `${given} ${family}` : given,
    );
    expect(called.filter((name) => !said.includes(name))).toEqual([]);
    expect(said.replaceAll(/Kelpington-\d+|9 Kelp/g, '')).not.toMatch(/\d/);
  });
});

/** How many pictures each page draws, as poppler lists them. */
async function countPictures(pdf: string): Promise<readonly number[]> {
  const pages = (await readWords(pdf)).length;
  const { stdout } = await run('pdfimages', ['-list', pdf]);
  const found = stdout
    .split('\n')
    .slice(2)
    .map((line) => Number(line.trim().split(/\s+/)[0]));
  return Array.from({ length: pages }, (_, at) => found.filter((page) => page === at + 1).length);
}

async function readPage(pdf: string, page: number): Promise<string> {
  const { stdout } = await run('pdftotext', ['-f', String(page), '-l', String(page), pdf, '-']);
  return stdout.replace(/\s+/g, ' ');
}

async function listKeptStills(lesson: string): Promise<readonly Buffer[]> {
  const evidence = path.join(lesson, 'evidence');
  const name = (await readdir(evidence)).find(
    (one) => one.includes('.stills.') && !one.startsWith('pattern'),
  );
  const kept = await openEvidenceCache(evidence).read(name?.split('.')[0] ?? '', stillsAnalyser);
  return (kept?.stills ?? []).map(({ jpeg }) => Buffer.from(jpeg));
}

/** The largest difference between neighbours in a line of any picture on the second page. */
async function findSharpestStep(pdf: string): Promise<number> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-stills-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await run('pdfimages', ['-f', '2', '-l', '2', pdf, path.join(folder, 'still')]);
  const pictures = await Promise.all(
    (await readdir(folder)).map((name) => readFile(path.join(folder, name))),
  );
  return Math.max(
    ...pictures.map((bytes) => {
      const { luma: samples, width } = readNetpbm(bytes);
      const isColour = bytes.subarray(0, 2).toString() === 'P6';
      const [pixel, line] = isColour ? [3, width * 3] : [1, width];
      let most = 0;
      for (let at = pixel; at < samples.length; at++) {
        if (at % line >= pixel)
          most = Math.max(most, Math.abs((samples[at] ?? 0) - (samples[at - pixel] ?? 0)));
      }
      return most;
    }),
  );
}
