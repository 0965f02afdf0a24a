import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  type DecodedPacket,
  type DecodeEnd,
  type DecodeRequest,
  decodeClip,
  probeClip,
} from '../../../src-core/host/decode-clip.ts';
import { choosePictures } from '../../../src-core/host/decode-orders.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { filmClip } from './film-clip.ts';

let folder = '';
let ffmpeg = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'decode-'));
  const found = await findFfmpeg();
  if (!found.ok) throw new Error('these tests need ffmpeg');
  ffmpeg = found.value.path;
});

afterAll(() => rm(folder, { recursive: true }));

const place = (name: string) => join(folder, name);
const call = (...args: readonly string[]) => promisify(execFile)(ffmpeg, ['-v', 'error', '-y', ...args]);

interface Decoded {
  readonly byKind: Readonly<Record<string, DecodedPacket[]>>;
  readonly end: DecodeEnd;
}

async function decode(path: string, request: Partial<DecodeRequest> = {}): Promise<Decoded> {
  const { facts } = await probeClip(path);
  const run = decodeClip(path, {
    ...{ pass: 'full', facts, cards: true, pictures: 'leaned-on', threads: 1 },
    ...request,
  } as DecodeRequest);
  const byKind: Record<string, DecodedPacket[]> = { luma: [], still: [], colour: [], card: [] };
  for await (const packet of run.packets) byKind[packet.kind]?.push(packet);
  return { byKind, end: await run.ended };
}

const times = (packets: readonly DecodedPacket[] = []) => packets.map(({ atSeconds }) => atSeconds);
const size = (packets: readonly DecodedPacket[] = []) => `${packets[0]?.width}x${packets[0]?.height}`;

describe('a clip decoded whole', () => {
  test('gives luma, stills, colours and cards from one run', async () => {
    const path = await filmClip(place('plain.mp4'), { shots: [{ seconds: 6 }] });
    const { byKind, end } = await decode(path);
    expect(end).toMatchObject({ reason: 'done', problem: null, facts: { durationSeconds: 6, rateHz: 30 } });
    expect(end.cpuSeconds).toBeGreaterThan(0);
    expect(byKind.luma).toHaveLength(90);
    expect(times(byKind.luma).slice(0, 4)).toEqual([0, 0.067, 0.133, 0.2]);
    expect([size(byKind.luma), size(byKind.still), size(byKind.colour), size(byKind.card)]).toEqual([
      ...['80x45', '224x126', '128x72', '640x360'],
    ]);
    expect(byKind.luma?.every(({ bytes }) => bytes.length === 80 * 45)).toBe(true);
    expect(byKind.colour?.every(({ bytes }) => bytes.length === (128 * 72 * 3) / 2)).toBe(true);
    expect(byKind.still?.every(({ bytes }) => bytes[0] === 0xff && bytes[1] === 0xd8)).toBe(true);
    expect(byKind.colour).toHaveLength(6);
    const cards = times(byKind.card);
    expect(cards.filter((at) => at < 3.5)).toHaveLength(18);
    expect(cards.filter((at) => at >= 3.5 && at < 4.9)).toEqual([]);
    expect(cards.filter((at) => at >= 5)).toHaveLength(5);
  });

  test.each([90, 180, 270])('stands upright when the file says so (%i degrees)', async (turn) => {
    const flat = await filmClip(place('flat.mp4'), { shots: [{ seconds: 1 }] });
    const turned = place(`turned-${turn}.mp4`);
    await call('-i', flat, '-c', 'copy', '-metadata:s:v', `rotate=${turn}`, turned);
    const upright = place(`upright-${turn}.mp4`);
    await call('-i', turned, '-c:v', 'libx264', '-crf', '12', upright);
    const [own, reference] = [await decode(turned), await decode(upright)];
    expect(own.end.facts.turnDegrees).not.toBe(0);
    expect(reference.end.facts.turnDegrees).toBe(0);
    expect(size(own.byKind.luma)).toBe(turn === 180 ? '80x45' : '45x80');
    const [a, b] = [own.byKind.luma?.[3]?.bytes ?? [], reference.byKind.luma?.[3]?.bytes ?? []];
    const apart = [...a].reduce((sum, value, at) => sum + Math.abs(value - (b[at] ?? 0)), 0) / a.length;
    expect(apart).toBeLessThan(4);
  });

  test('of few pictures a second is read at its own rate', async () => {
    const path = await filmClip(place('slow.mp4'), { shots: [{ seconds: 4 }], rate: 10 });
    const { byKind } = await decode(path);
    expect(byKind.luma).toHaveLength(40);
  });

  test.each([
    ['an animated GIF', 'a.gif', ['-vf', 'scale=160:-2,fps=10']],
    ['an AVI file', 'a.avi', ['-c:v', 'mjpeg', '-q:v', '5']],
    ['an MPEG-4 Part 2 file', 'a-part2.mp4', ['-c:v', 'mpeg4', '-q:v', '5']],
    ['a WebM file', 'a.webm', ['-c:v', 'libvpx', '-deadline', 'realtime', '-b:v', '1M']],
  ])('may be %s', async (_, name, options) => {
    const film = await filmClip(place('any.mp4'), { shots: [{ seconds: 2 }] });
    await call('-i', film, ...options, place(name));
    const { byKind, end } = await decode(place(name));
    expect(end.problem).toBeNull();
    expect(byKind.luma?.length).toBeGreaterThanOrEqual(19);
    expect(byKind.still?.length).toBeGreaterThanOrEqual(19);
  });

  test('may be a photo', async () => {
    const film = await filmClip(place('photo.mp4'), { shots: [{ seconds: 0.2 }] });
    await call('-i', film, '-frames:v', '1', place('IMG_%04d.jpg'));
    await call('-i', film, '-frames:v', '1', place('photo.jpg'));
    const { byKind, end } = await decode(place('photo.jpg'));
    expect(end.problem).toBeNull();
    expect(byKind.luma).toHaveLength(1);
  });

  test('that breaks off gives what was decoded, and says where it ends', async () => {
    const path = await filmClip(place('cut.mkv'), { shots: [{ seconds: 8 }] });
    const { size: bytes } = await import('node:fs').then(({ statSync }) => statSync(path));
    await truncate(path, Math.round(bytes * 0.5));
    const { byKind, end } = await decode(path);
    expect(end.problem?.code).toBe('decode-cut-short');
    expect(byKind.luma?.length).toBeGreaterThan(40);
    expect(byKind.luma?.length).toBeLessThan(80);
  });

  test('that is none gives nothing and one problem', async () => {
    await writeFile(place('none.mp4'), 'Laps: 2, 2, 1.');
    const { byKind, end } = await decode(place('none.mp4'));
    expect(end.problem?.code).toBe('decode-failed');
    expect(byKind.luma).toEqual([]);
  });

  test('can be stopped in the middle', async () => {
    const path = await filmClip(place('stop.mp4'), { shots: [{ seconds: 6 }] });
    const controller = new AbortController();
    const { facts } = await probeClip(path);
    const run = decodeClip(path, {
      ...{ pass: 'full', facts, cards: false, pictures: 'all', threads: 1 },
      signal: controller.signal,
    });
    for await (const packet of run.packets) if (packet.atSeconds >= 0) controller.abort();
    expect((await run.ended).problem).toEqual({ code: 'decode-cancelled' });
  });

  test('ends when its time is over', async () => {
    const path = await filmClip(place('late.mp4'), { shots: [{ seconds: 2 }] });
    const { end } = await decode(path, { limitSeconds: 0.001 });
    expect(end.problem).toEqual({ code: 'decode-timed-out', limitSeconds: 0.001 });
  });
});

describe('pictures that no other leans on', () => {
  test('are left out of large ones, which keep their own times where the clip has two, three or four a step', () => {
    const choose = (rateHz: number | null, pixels = 1920 * 1080) =>
      choosePictures({ durationSeconds: 20, turnDegrees: 0, rateHz, pixels });
    expect([30, 29.97, 60, 59.94, 45].map((rateHz) => choose(rateHz))).toEqual(Array(5).fill('uneven'));
    expect([25, 24, 29, 50, null].map((rateHz) => choose(rateHz))).toEqual(Array(5).fill('leaned-on'));
    expect(choose(30, 640 * 360)).toBe('all');
  });

  const film = (name: string, bframes: number) =>
    filmClip(place(name), {
      shots: [{ seconds: 4 }],
      options: [
        ...[
          '-c:v',
          'libx264',
          '-preset',
          'ultrafast',
          '-bf',
          String(bframes),
          '-b_strategy',
          '0',
          '-g',
          '60',
        ],
        ...['-x264-params', 'b-pyramid=0', '-pix_fmt', 'yuv420p'],
      ],
    });

  test('are left out where fifteen a second remain', async () => {
    const { byKind, end } = await decode(await film('b1.mp4', 1));
    expect(end).toMatchObject({ reason: 'done', better: null });
    expect(byKind.luma).toHaveLength(60);
  });

  test('are left out where ten remain, each at its own time', async () => {
    const path = await film('b2.mp4', 2);
    expect((await decode(path)).end).toMatchObject({ reason: 'too-sparse', better: 'uneven', problem: null });
    const { byKind, end } = await decode(path, { pictures: 'uneven' });
    expect(end).toMatchObject({ reason: 'done', better: null });
    expect(times(byKind.luma).slice(0, 4)).toEqual([0, 0.1, 0.2, 0.3]);
  });

  test('are decoded where fewer remain', async () => {
    const path = await film('b5.mp4', 5);
    expect((await decode(path)).end).toMatchObject({ reason: 'too-sparse', better: 'all' });
    const { byKind, end } = await decode(path, { pictures: 'all' });
    expect(end.better).toBeNull();
    expect(byKind.luma).toHaveLength(60);
  });
});

describe('a first look', () => {
  test('takes key pictures of a few stretches', async () => {
    const path = await filmClip(place('look.mp4'), { shots: [{ seconds: 20 }] });
    const { byKind, end } = await decode(path, { pass: 'quick', durationSeconds: 20 });
    expect(end.problem).toBeNull();
    expect(byKind.luma).toEqual([]);
    expect(times(byKind.card)).toEqual(times(byKind.still));
    const at = times(byKind.card);
    expect(at.length).toBeGreaterThanOrEqual(8);
    expect(at.length).toBeLessThanOrEqual(12);
    expect(at.every((second) => Math.abs(second - Math.round(second)) < 0.05)).toBe(true);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
    expect(Math.max(...at)).toBeGreaterThan(17);
  });

  test('takes one stretch of a short clip, and what a photo shows', async () => {
    const path = await filmClip(place('short.mp4'), { shots: [{ seconds: 3 }] });
    const { byKind } = await decode(path, { pass: 'quick', durationSeconds: 3 });
    expect(byKind.still).toHaveLength(3);
    await call('-i', path, '-frames:v', '1', place('one.jpg'));
    expect(
      (await decode(place('one.jpg'), { pass: 'quick', durationSeconds: null })).byKind.still,
    ).toHaveLength(1);
    expect((await readFile(place('one.jpg'))).length).toBeGreaterThan(0);
  });
});
