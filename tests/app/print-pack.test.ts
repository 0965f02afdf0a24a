import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, onTestFinished, test } from 'vitest';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { findMissingPhotos } from '../../src-core/host/find-missing-photos.ts';
import {
  canReadPaper,
  findInkInMargins,
  findOnTop,
  findOutside,
  hasColour,
  listPictures,
  PAPERS,
  readFonts,
  readText,
  readWords,
} from './paper.ts';
import { fillPlan, readHarbour, sayAtLength } from './paper-plans.ts';
import { LOOKS, print } from './print-paper.ts';

describe.skipIf(!canReadPaper())('the print pack', () => {
  test.each(LOOKS)(
    'on %s in %s: right size, fonts in it, all inside the margins, nothing on anything else',
    async (paper, colours, look) => {
      const { file, problems } = await print(readHarbour(), look);
      expect(problems).toEqual([]);
      const fonts = await readFonts(file);
      expect(fonts.length).toBeGreaterThan(0);
      expect(fonts.filter(({ isEmbedded }) => !isEmbedded)).toEqual([]);
      const pages = await readWords(file);
      expect(pages).toHaveLength(16);
      for (const { width, height, words } of pages) {
        expect([width, height].map(Math.round)).toEqual(PAPERS[paper].map(Math.round));
        expect(findOutside(words, width, height)).toEqual([]);
        expect(findOnTop(words)).toEqual([]);
      }
      expect(await hasColour(file)).toBe(colours === 'colour');
      expect(await findInkInMargins(file, PAPERS[paper])).toEqual([]);
    },
  );

  test('with every field as long as a plan takes still fits, on more pages', async () => {
    const { file, problems, pageCount } = await print(readHarbour(fillPlan));
    expect(problems).toEqual([]);
    expect(pageCount).toBeGreaterThan(16);
    for (const { width, height, words } of await readWords(file)) {
      expect(findOutside(words, width, height)).toEqual([]);
      expect(findOnTop(words)).toEqual([]);
    }
  });

  test('says all that the plan and the roster say, names in Latin, Greek and Cyrillic among it', async () => {
    const { plan, pupils } = readHarbour();
    const [first, second, ...rest] = pupils;
    if (!first || !second) throw new Error('the harbour has pupils');
    const named = [
      { ...first, given: 'Ελένη', family: 'Παπαδοπούλου' },
      { ...second, given: 'Наталья', family: 'Ївженко' },
      ...rest,
    ];
    const { file, problems } = await print({ plan, pupils: named });
    expect(problems).toEqual([]);
    const said = await readText(file);
    const wanted = [
      ...named.map(({ given, family }) => `${given} ${family}`),
      ...plan.stations.flatMap(({ place, exercise, clue = '', caution = '' }) => [
        place,
        exercise,
        clue,
        caution,
      ]),
      ...plan.squads.map(({ tablet }) => tablet),
    ];
    expect(wanted.filter((words) => !said.includes(words))).toEqual([]);
  });

  test('a name in letters that no font has leaves a line to write on, and says whose', async () => {
    const { plan, pupils } = readHarbour();
    const named = pupils.map((pupil, at) => (at === 0 ? { ...pupil, given: '小明', family: '王' } : pupil));
    const { file, problems } = await print({ plan, pupils: named }, { parts: ['squads'] });
    expect(problems).toEqual([{ code: 'print-letters-missing', field: 'roster k-0412', letters: '小明王' }]);
    const said = await readText(file);
    expect(said).toContain('Bram Thistlewick');
    expect(said).not.toMatch(/[小明王\u25a1\ufffd]/);
  });

  test('an exercise too long to be read from two metres is named, and its card alone left out', async () => {
    const lesson = readHarbour((raw) => Object.assign(raw.stations[1] ?? {}, { exercise: sayAtLength(190) }));
    const { problems, pageCount } = await print(lesson, { parts: ['cards'] });
    expect(problems).toEqual([
      { code: 'print-text-too-long', field: 'stations[1].exercise', text: sayAtLength(190) },
    ]);
    expect(pageCount).toBe(5);
  });

  test('the answer key of a lesson that walks by its list has no column of clues; a single clue brings it', async () => {
    const without = readHarbour((raw) => {
      for (const station of raw.stations) delete station.clue;
    });
    const listed = await readText((await print(without, { parts: ['answers'] })).file);
    expect(listed).toContain('To set out');
    expect(listed).not.toMatch(/clue/i);
    const one = readHarbour((raw) => {
      for (const station of raw.stations.slice(1)) delete station.clue;
    });
    const sought = await readText((await print(one, { parts: ['answers'] })).file);
    expect(sought).toContain('Clue that leads here');
    expect(sought).toContain('no clue yet');
  });

  test('shows reference photos on the answer key alone, in grey where that is asked for, and names one that is lost', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'routemark-photos-'));
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    await mkdir(path.join(folder, 'photos'));
    const ffmpeg = await findFfmpeg();
    if (!ffmpeg.ok) throw new Error('these tests need ffmpeg');
    const source = ['-f', 'lavfi', '-i', 'testsrc=size=640x360', '-frames:v', '1'];
    await promisify(execFile)(ffmpeg.value.path, [
      '-v',
      'error',
      ...source,
      path.join(folder, 'photos/a.jpg'),
    ]);
    const lesson = readHarbour((raw) => {
      Object.assign(raw.stations[0] ?? {}, { photo: 'photos/a.jpg' });
      Object.assign(raw.stations[1] ?? {}, { photo: 'photos/lost.jpg', setting: 'outdoor' });
    });
    const lost = [{ code: 'print-photo-missing', station: 'B', path: 'photos/lost.jpg' }];
    for (const isGrey of [false, true]) {
      const { file, problems, pageCount } = await print(lesson, { parts: ['answers'], isGrey }, folder);
      expect(problems).toEqual(lost);
      expect(pageCount).toBe(1);
      expect(await listPictures(file)).toEqual([1]);
      expect(await hasColour(file)).toBe(!isGrey);
      expect(await readText(file)).toContain('Outdoors.');
    }
    const { file } = await print(lesson, { parts: ['cards', 'clues', 'squads'] }, folder);
    expect(await listPictures(file)).toEqual([]);
    expect(await findMissingPhotos(lesson.plan, folder)).toEqual(lost);
  });
});
