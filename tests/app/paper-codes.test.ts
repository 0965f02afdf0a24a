import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { readCodes } from '../../src-core/host/card-reader.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { readCards } from '../../src-core/host/read-cards.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { buildStationCards } from '../../src-core/printing/station-card.ts';
import { canReadPaper, findCode, readWithZbar, readWords, renderPages } from './paper.ts';
import { buildLongCircuit, readHarbour } from './paper-plans.ts';
import { LOOKS, print } from './print-paper.ts';

describe.skipIf(!canReadPaper())('codes on paper', () => {
  test('200 printed cards, all read as what they say, by both readers', async () => {
    const wrong: string[] = [];
    for (let at = 0; at < 5; at++) {
      const plan = buildLongCircuit(at);
      const { code: lesson, revision } = plan.lesson;
      const look = LOOKS[at % LOOKS.length]?.[2] ?? {};
      const { file } = await print({ plan, pupils: [] }, { parts: ['cards'], ...look });
      const { pages, dispose } = await renderPages(file, 60);
      const byZbar = await readWithZbar(pages.map((page) => page.file));
      for (const [index, { code: station, demonstration }] of plan.stations.entries()) {
        const text = formatStationCard({ lesson, station, revision, demonstration });
        const page = pages[index];
        const byZxing = page ? await readCodes(page) : [];
        if (byZxing.join() !== text || byZbar[index]?.join() !== text) wrong.push(text);
      }
      await dispose();
    }
    expect(wrong).toEqual([]);
  });

  test('are a tenth as wide as the distance that the card names, with four modules of nothing around', async () => {
    const lesson = readHarbour((raw) =>
      Object.assign(raw.stations[0] ?? {}, {
        demonstration: 'https://harbour.example/films/squat-reaches-from-the-side?from=0&to=20',
      }),
    );
    const { file } = await print(lesson, { parts: ['cards'] });
    const said = await Promise.all(
      [1, 6].map(
        async (page) => (await readWords(file))[page - 1]?.words.map(({ text }) => text).join(' ') ?? '',
      ),
    );
    const dotsPerMm = 6;
    const { pages, dispose } = await renderPages(file, dotsPerMm * 25.4);
    for (const [at, index] of [0, 5].entries()) {
      const page = pages[index];
      if (!page) throw new Error('a page a card');
      const code = await findCode(page);
      const millimetres = 10 * Number(/no more than (\d+) cm away/.exec(said[at] ?? '')?.[1]);
      expect(code.width / dotsPerMm).toBeGreaterThanOrEqual(millimetres / 10 - 0.5);
      const { modules } = buildStationCards(lesson.plan)[index]?.qr ?? { modules: 0 };
      const quiet = Math.floor((code.width / modules) * 4) - 2;
      expect(countInkAround(page, code, quiet)).toBe(0);
      expect(countInkAround(page, code, quiet * 2)).toBeGreaterThan(0);
    }
    await dispose();
  });

  test.each([
    ['a plain card', undefined],
    ['a card with a demonstration', 'https://harbour.example/films/squat-reaches-from-the-side'],
    ['the longest address', `https://harbour.example/${'quay-'.repeat(35)}`.slice(0, 200)],
  ])('%s is read out of a film made from the distance that it names', async (_, demonstration) => {
    const lesson = readHarbour((raw) => {
      Object.assign(raw.stations[0] ?? {}, demonstration && { demonstration });
      // As long as a code's own part can be: with the longest address 227 characters.
      Object.assign(raw.lesson, { code: 'LONG-HARBOUR', revision: 999 });
      Object.assign(raw.stations[0] ?? {}, { code: 'A01' });
      for (const squad of raw.squads) squad.route = squad.route.map((code) => (code === 'A' ? 'A01' : code));
    });
    const { file } = await print(lesson, { parts: ['cards'] });
    const [card] = buildStationCards(lesson.plan);
    if (!card) throw new Error('the harbour has cards');
    const clip = await filmPaper(file, card.qr.distanceMetres);
    const { readings } = await readCards(clip);
    expect(new Set(readings.map(({ text }) => text))).toEqual(new Set([card.qr.text]));
  });
});

function countInkAround(
  { width, luma }: { readonly width: number; readonly luma: Uint8Array },
  code: { readonly left: number; readonly top: number; readonly width: number },
  quiet: number,
): number {
  let ink = 0;
  for (let y = code.top - quiet; y <= code.top + code.width + quiet; y++) {
    for (let x = code.left - quiet; x <= code.left + code.width + quiet; x++) {
      const isInside =
        x >= code.left - 2 &&
        x <= code.left + code.width + 2 &&
        y >= code.top - 2 &&
        y <= code.top + code.width + 2;
      if (!isInside && (luma[y * width + x] ?? 255) < 200) ink++;
    }
  }
  return ink;
}

/**
 * Films the first page as a tablet would from so far away: 1080p through a lens of 60°, the paper turned and tilted on
 * grey ground, with blur and sensor noise, through a real encoder.
 */
async function filmPaper(pdf: string, distanceMetres: number): Promise<string> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) throw new Error('these tests need ffmpeg');
  const pixelsPerMm = 1920 / (2 * Math.tan(Math.PI / 6) * distanceMetres * 1000);
  const { pages, dispose } = await renderPages(pdf, pixelsPerMm * 25.4);
  const clip = pdf.replace('.pdf', '.mp4');
  const filters = [
    'perspective=x0=0.03*W:y0=0.02*H:x1=W:y1=0:x2=0:y2=H:x3=0.95*W:y3=0.97*H:sense=destination',
    'crop=iw:min(ih\\,1080)',
    'pad=1920:1080:(ow-iw)/2:(oh-ih)/2:color=gray',
    'rotate=0.12:fillcolor=gray',
    'gblur=sigma=0.8',
    'noise=alls=12:allf=t',
  ];
  const input = ['-loop', '1', '-framerate', '10', '-i', pages[0]?.file ?? ''];
  const output = [
    '-t',
    '1.5',
    '-c:v',
    'libx264',
    '-preset',
    'ultrafast',
    '-crf',
    '26',
    '-pix_fmt',
    'yuv420p',
    clip,
  ];
  await promisify(execFile)(ffmpeg.value.path, [
    '-v',
    'error',
    '-y',
    ...input,
    '-vf',
    filters.join(','),
    ...output,
  ]);
  await dispose();
  expect((await readFile(clip)).length).toBeGreaterThan(1000);
  return clip;
}
