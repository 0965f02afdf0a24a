import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chmod, mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import type { LumaFrame } from '../../../src-core/evidence/luma-frame.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { type FrameRequest, type FrameRunEnd, sampleFrames } from '../../../src-core/host/sample-frames.ts';
import { filmClip } from './film-clip.ts';

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'frames-'));
});

afterEach(() => {
  vi.unstubAllEnvs();
});

afterAll(() => rm(folder, { recursive: true }));

async function collect(
  path: string,
  request: FrameRequest,
): Promise<{ frames: LumaFrame[]; end: FrameRunEnd }> {
  const run = sampleFrames(path, request);
  const frames: LumaFrame[] = [];
  for await (const frame of run.frames) frames.push(frame);
  return { frames, end: await run.ended };
}

const HEAD: FrameRequest = { windows: [{ fromSeconds: 0, lengthSeconds: 2, take: { perSecond: 5 } }] };

const hasFfprobe = spawnSync('ffprobe', ['-version']).status === 0;

/** Every picture's time as ffprobe tells it, counted from the start of the file. */
function probeTimes(path: string): number[] {
  const fields = ['-show_entries', 'format=start_time:packet=pts_time', '-select_streams', 'v'];
  const told = JSON.parse(
    execFileSync('ffprobe', ['-v', 'error', '-of', 'json', ...fields, path], { encoding: 'utf8' }),
  );
  const start = Number(told.format.start_time);
  return told.packets.map((packet: { pts_time: string }) => Number(packet.pts_time) - start);
}

describe('pictures', () => {
  test('come at the asked rate with their own times, scaled down, brightness alone', async () => {
    const path = await filmClip(join(folder, 'plain.mp4'), {
      shots: [{ seconds: 4 }],
      width: 1280,
      height: 720,
    });
    const { frames, end } = await collect(path, HEAD);
    expect(frames.map(({ atSeconds }) => atSeconds)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8]);
    for (const { width, height, luma } of frames) {
      expect([width, height, luma.length]).toEqual([960, 540, 960 * 540]);
      expect(Math.max(...luma.subarray(0, 9600)) - Math.min(...luma.subarray(0, 9600))).toBeGreaterThan(10);
    }
    expect(end).toEqual({ reason: 'done', problem: null, durationSeconds: 4, frameCount: 10 });
  });

  test.skipIf(!hasFfprobe).each([
    ['at 29.97 a second', 'ntsc.mp4', '30000/1001'],
    ['of a stream that starts at 1.4 s', 'late.ts', '25'],
    ['of Matroska, whose times are whole milliseconds', 'ms.mkv', '24000/1001'],
  ])('%s have the times that ffprobe tells (skipped where ffprobe is missing)', async (_, name, rate) => {
    const [over = 30, under = 1] = rate.split('/').map(Number);
    const h264 = ['-c:v', 'libx264', '-preset', 'veryfast', '-pix_fmt', 'yuv420p', '-g', '24'];
    const film = { shots: [{ seconds: 8 }], width: 320, height: 180, rate: over / under };
    const path = await filmClip(join(folder, name), { ...film, options: h264 });
    const times = probeTimes(path);
    const windows: FrameRequest['windows'] = [
      { fromSeconds: 0, lengthSeconds: 2, take: { perSecond: 5 } },
      { fromSeconds: 3.9, lengthSeconds: 1, take: 'key-picture' },
      { fromSeconds: 7, lengthSeconds: 1, take: { perSecond: 5 } },
    ];
    const { frames } = await collect(path, { windows });
    expect(frames.length).toBeGreaterThanOrEqual(12);
    expect(frames[0]?.atSeconds).toBeCloseTo(0, 6);
    for (const { atSeconds } of frames) {
      expect(Math.min(...times.map((time) => Math.abs(time - atSeconds)))).toBeLessThan(2e-6);
    }
    const middle = frames.filter(({ atSeconds }) => atSeconds > 2 && atSeconds < 6.9);
    expect(middle).toHaveLength(1);
  });

  test('stand upright as the rotation metadata asks, and are not scaled up', async () => {
    const path = await filmClip(join(folder, 'turned.mp4'), {
      shots: [{ seconds: 3 }],
      width: 320,
      height: 180,
    });
    const bytes = await readFile(path);
    // The matrix of a quarter turn, ISO/IEC 14496-12, 8.3.2 (tkhd) and 6.2.2 (matrix): a, b, u, c, d, v, …
    const matrix = bytes.indexOf('tkhd') + 4 + 40;
    [0, 0x10000, 0, -0x10000, 0, 0].forEach((value, at) => {
      bytes.writeInt32BE(value, matrix + at * 4);
    });
    await writeFile(path, bytes);
    const { frames } = await collect(path, HEAD);
    expect(frames.map(({ width, height }) => [width, height])).toEqual(Array(10).fill([180, 320]));
  });
});

describe('a run ends', () => {
  test('early when enough was seen', async () => {
    const path = await filmClip(join(folder, 'long.mp4'), { shots: [{ seconds: 20 }] });
    const run = sampleFrames(path, {
      windows: [{ fromSeconds: 0, lengthSeconds: 20, take: { perSecond: 30 } }],
    });
    for await (const frame of run.frames) if (frame.atSeconds > 0.3) break;
    expect(await run.ended).toMatchObject({ reason: 'stopped', problem: null });
  });

  test('when it is cancelled, before and on the way', async () => {
    const path = await filmClip(join(folder, 'cancel.mp4'), { shots: [{ seconds: 20 }] });
    const cancel = new AbortController();
    const windows: FrameRequest['windows'] = [{ fromSeconds: 0, lengthSeconds: 20, take: { perSecond: 30 } }];
    const run = sampleFrames(path, { windows, signal: cancel.signal });
    for await (const frame of run.frames) if (frame.atSeconds === 0) cancel.abort();
    expect(await run.ended).toMatchObject({ reason: 'cancelled', problem: { code: 'decode-cancelled' } });
    expect((await collect(path, { windows, signal: cancel.signal })).end).toMatchObject({
      reason: 'cancelled',
      frameCount: 0,
    });
  });

  test('with what came before where the file was cut short', async () => {
    const h264 = [
      '-c:v',
      'libx264',
      '-preset',
      'ultrafast',
      '-pix_fmt',
      'yuv420p',
      '-movflags',
      '+faststart',
    ];
    const path = await filmClip(join(folder, 'cut.mp4'), {
      shots: [{ seconds: 4, background: 'noise' }],
      options: h264,
    });
    await truncate(path, Math.round((await readFile(path)).length * 0.2));
    const { frames, end } = await collect(path, HEAD);
    expect(frames.length).toBeGreaterThan(0);
    expect(end.problem).toMatchObject({ code: 'decode-cut-short', lastSeconds: frames.at(-1)?.atSeconds });
  });

  test('with a problem where there is no such file', async () => {
    const { end } = await collect(join(folder, 'absent.mp4'), HEAD);
    expect(end.problem).toMatchObject({
      code: 'decode-interrupted',
      detail: expect.stringContaining('No such file'),
    });
  });
});

describe('an ffmpeg that does not obey', () => {
  /** A program that answers as ffmpeg, then writes its process number and hangs, deaf to SIGTERM. */
  async function writeStubborn(): Promise<{ program: string; pidFile: string }> {
    const program = join(folder, 'stubborn');
    const pidFile = join(folder, 'stubborn.pid');
    const lines = [
      `#!${process.execPath}`,
      `if (process.argv.includes('-version')) { console.log('ffmpeg version 6.0'); process.exit(0); }`,
      `if (process.argv.includes('-encoders')) process.exit(0);`,
      `process.on('SIGTERM', () => {});`,
      `require('fs').writeFileSync(${JSON.stringify(pidFile)}, String(process.pid));`,
      'setInterval(() => {}, 1000);',
    ];
    await writeFile(program, lines.join('\n'));
    await chmod(program, 0o755);
    return { program, pidFile };
  }

  function isAlive(pid: number): boolean {
    try {
      return process.kill(pid, 0);
    } catch {
      return false;
    }
  }

  test.skipIf(process.platform === 'win32')(
    'is killed after its time and a grace, and the run says so',
    async () => {
      const { program, pidFile } = await writeStubborn();
      vi.stubEnv('ROUTEMARK_FFMPEG', program);
      const { frames, end } = await collect(join(folder, 'any.mp4'), { ...HEAD, limitSeconds: 4 });
      expect(frames).toEqual([]);
      expect(end).toMatchObject({
        reason: 'timed-out',
        problem: { code: 'decode-timed-out', limitSeconds: 4 },
      });
      expect(isAlive(Number(await readFile(pidFile, 'utf8')))).toBe(false);
    },
  );

  test.skipIf(process.platform === 'win32')('is killed when the work is cancelled', async () => {
    const { program, pidFile } = await writeStubborn();
    vi.stubEnv('ROUTEMARK_FFMPEG', program);
    const cancel = new AbortController();
    await rm(pidFile, { force: true });
    const collecting = collect(join(folder, 'any.mp4'), { ...HEAD, signal: cancel.signal });
    const pid = await vi.waitFor(
      async () => {
        const written = Number(await readFile(pidFile, 'utf8'));
        expect(written).toBeGreaterThan(0);
        return written;
      },
      { timeout: 20_000, interval: 50 },
    );
    expect(isAlive(pid)).toBe(true);
    cancel.abort();
    expect((await collecting).end.problem).toEqual({ code: 'decode-cancelled' });
    expect(isAlive(pid)).toBe(false);
  });
});

describe('ffmpeg is looked for', () => {
  test('and its absence is a problem that names the places', async () => {
    const isPackaged = (() => {
      try {
        return existsSync(String(createRequire(import.meta.url)('ffmpeg-static')));
      } catch {
        return false;
      }
    })();
    vi.stubEnv('PATH', folder);
    vi.stubEnv('ROUTEMARK_FFMPEG', join(folder, 'not-here'));
    if (isPackaged) return;
    const { end } = await collect(join(folder, 'any.mp4'), HEAD);
    const tried = [join(folder, 'not-here')];
    expect(end).toMatchObject({ reason: 'missing', problem: { code: 'ffmpeg-missing', tried } });
  });

  test('and a named program that is something else is passed over', async () => {
    const found = await findFfmpeg({ ...process.env, ROUTEMARK_FFMPEG: process.execPath });
    expect(found).toMatchObject({ ok: true, value: { version: expect.stringMatching(/^ffmpeg version/) } });
  });
});
