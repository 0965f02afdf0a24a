import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readCards } from '../../../src-core/host/read-cards.ts';
import { formatClockCard, formatStationCard } from '../../../src-core/lesson/card-text.ts';
import type { SceneCard } from './draw-scene.ts';
import { filmClip } from './film-clip.ts';

const TEXT = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });
const CARD: SceneCard = { text: TEXT, pixelsPerModule: 4, turnDegrees: 12, tilt: 0.15 };

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cards-'));
});

afterAll(() => rm(folder, { recursive: true }));

function place(name: string): string {
  return join(folder, name);
}

describe('a station card', () => {
  test('held up for the first second and a half is read several times, and the rest is left alone', async () => {
    const path = await filmClip(place('head.mp4'), { shots: [{ seconds: 1.5, card: CARD }, { seconds: 8 }] });
    const { readings, problems, frameCount } = await readCards(path);
    expect(new Set(readings.map(({ text }) => text))).toEqual(new Set([TEXT]));
    expect(readings.map(({ atSeconds }) => atSeconds)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4]);
    expect(problems).toEqual([]);
    expect(frameCount).toBeLessThan(12);
  });

  test('held up at the end alone is found in the tail', async () => {
    const path = await filmClip(place('tail.mp4'), { shots: [{ seconds: 8 }, { seconds: 1.2, card: CARD }] });
    const { readings, problems } = await readCards(path);
    expect(readings.length).toBeGreaterThanOrEqual(4);
    expect(readings.every(({ text, atSeconds }) => text === TEXT && atSeconds >= 8)).toBe(true);
    expect(problems).toEqual([]);
  });

  test('that hangs in the middle of the clip is found on the way', async () => {
    const shots = [{ seconds: 5 }, { seconds: 4, card: CARD }, { seconds: 4 }];
    const { readings } = await readCards(await filmClip(place('middle.mp4'), { shots }));
    expect(readings.map(({ text }) => text)).toContain(TEXT);
  });

  test.each([
    ['a Matroska file', 'plain.mkv', []],
    ['HEVC', 'hevc.mp4', ['-c:v', 'libx265', '-preset', 'ultrafast', '-x265-params', 'log-level=none']],
    ['a WebM file', 'plain.webm', ['-c:v', 'libvpx', '-deadline', 'realtime', '-b:v', '1M']],
    ['a clip without B-pictures at 60 a second', 'fast.mp4', ['-bf', '0', '-r', '60']],
  ])('is read from %s', async (_, name, options) => {
    const h264 = options.includes('-c:v') ? [] : ['-c:v', 'libx264', '-preset', 'veryfast'];
    const film = { shots: [{ seconds: 1, card: CARD }, { seconds: 2 }] };
    const path = await filmClip(place(name), {
      ...film,
      options: [...h264, ...options, '-pix_fmt', 'yuv420p'],
    });
    const { readings, problems } = await readCards(path);
    expect(readings.length).toBeGreaterThanOrEqual(4);
    expect(readings.every(({ text }) => text === TEXT)).toBe(true);
    expect(problems).toEqual([]);
  });

  test('is read from a photo, whatever its name looks like', async () => {
    const film = { shots: [{ seconds: 1 / 30, card: CARD }], options: ['-frames:v', '1', '-update', '1'] };
    const bytes = await readFile(await filmClip(place('photo.jpg'), film));
    const path = place('IMG_%04d [Häfen] $1.JPG');
    await writeFile(path, bytes);
    expect(await readCards(path)).toMatchObject({ readings: [{ text: TEXT, atSeconds: 0 }], problems: [] });
  });
});

describe('other codes', () => {
  test('the class clock is read second by second, to the end of the head', async () => {
    const startMs = Date.UTC(2025, 4, 15, 13, 47, 3, 400);
    const clock = (at: number) => ({ text: formatClockCard(startMs + at * 1000), pixelsPerModule: 4 });
    const { readings } = await readCards(
      await filmClip(place('clock.mp4'), { shots: [{ seconds: 5, card: clock }] }),
    );
    expect(readings.length).toBeGreaterThanOrEqual(17);
    for (const { text, atSeconds } of readings) expect(text).toBe(clock(atSeconds).text);
  });

  test('a foreign code is passed on, and the card is still looked for', async () => {
    const menu = { text: 'https://harbour.example/menu', pixelsPerModule: 4 };
    const shots = [{ seconds: 4, card: menu }, { seconds: 3 }, { seconds: 1.2, card: CARD }];
    const { readings } = await readCards(await filmClip(place('foreign.mp4'), { shots }));
    expect(new Set(readings.map(({ text }) => text))).toEqual(new Set([menu.text, TEXT]));
  });

  test('a clip without any code gives none', async () => {
    const shots = (['squares', 'stripes', 'rings', 'blobs'] as const).map((background) => ({
      seconds: 2,
      background,
    }));
    const { readings, problems } = await readCards(await filmClip(place('none.mp4'), { shots }));
    expect([readings, problems]).toEqual([[], []]);
  });
});

describe('a damaged file', () => {
  const whole = {
    shots: [
      { seconds: 1, card: CARD },
      { seconds: 9, background: 'noise' as const },
    ],
  };

  test('cut in its head still gives the card, and says that it was cut', async () => {
    const h264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '30', '-pix_fmt', 'yuv420p'];
    const path = await filmClip(place('cut.mp4'), {
      ...whole,
      options: [...h264, '-movflags', '+faststart'],
    });
    await truncate(path, Math.round((await readFile(path)).length * 0.15));
    const { readings, problems } = await readCards(path);
    expect(readings[0]?.text).toBe(TEXT);
    expect(problems).toMatchObject([{ code: 'decode-cut-short' }]);
  });

  test('without its index gives no reading and one problem', async () => {
    const path = await filmClip(place('no-index.mp4'), whole);
    await truncate(path, Math.round((await readFile(path)).length * 0.5));
    const { readings, problems } = await readCards(path);
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([
      { code: 'decode-failed', detail: expect.stringContaining('Invalid data') },
    ]);
  });

  test.each([
    ['empty', ''],
    ['text', 'Shopping: rope, tar, lamp oil.'],
    ['a playlist of addresses', '#EXTM3U\n#EXTINF:10,\nhttp://127.0.0.1:9/a.ts\n#EXT-X-ENDLIST\n'],
  ])('that is %s gives one problem', async (_, content) => {
    const path = place('odd.mp4');
    await writeFile(path, content);
    const { readings, problems } = await readCards(path);
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([{ code: 'decode-failed' }]);
  });
});
