import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { makeFilm } from '../../fixtures/film/make-film.ts';
import { CLIPS } from '../../fixtures/harbour/clips.ts';
import expected from '../../fixtures/harbour/expected.json' with { type: 'json' };
import { buildOrder } from '../../fixtures/harbour/orders.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { type CommandEnd, routemark } from './command-line.ts';
import { evidenceSchema } from './printed-json.ts';

let folder = '';
let ffmpeg = '';
const place = (name: string) => path.join(folder, name);
const call = (...args: readonly string[]) => promisify(execFile)(ffmpeg, ['-v', 'error', '-y', ...args]);

/** A squad of the demo at station A, with its card; its truth is written in the scenario. */
const FILMED = 'Teal squad/IMG_0412.MOV';
const TRUTH = expected.clips.find(({ file }) => file === FILMED);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'routemark-evidence-test-'));
  const found = await findFfmpeg();
  if (!found.ok) throw new Error('these tests need ffmpeg');
  ffmpeg = found.value.path;
  const row = CLIPS.find(
    ({ station, card, kept }) => station === 'A' && card !== false && kept === undefined,
  );
  if (!row) throw new Error('the demo has a film of station A');
  const { script, recording } = buildOrder(row, 1);
  const order = { script, recording: { ...recording, container: 'mp4', codec: 'h264' } as const };
  await makeFilm(order, place('squad.mp4'), { ffmpeg, signal: new AbortController().signal });
});

afterAll(() => rm(folder, { recursive: true }));

function readAll(end: CommandEnd): z.infer<typeof evidenceSchema> {
  expect(end.stderr).not.toMatch(/\bat .*:\d+:\d+|node:internal|undefined/);
  return evidenceSchema.parse(JSON.parse(end.stdout));
}

describe('evidence of a clip of no lesson', () => {
  test('holds reps, unison, cards and what it cost, as other programs may rely on', async () => {
    const end = await routemark(['evidence', place('squad.mp4'), '--json']);
    const [own, ...more] = readAll(end);
    expect({ code: end.code, more }).toEqual({ code: 0, more: [] });
    expect(own).toMatchObject({ file: place('squad.mp4'), problems: [] });
    const { reps, unison, cards } = own ?? { reps: null, unison: null, cards: [] };
    expect(Math.abs((reps?.count ?? 0) - (TRUTH?.reps ?? 0))).toBeLessThanOrEqual(1);
    expect(reps?.timesSeconds).toHaveLength(reps?.count ?? -1);
    expect([...(reps?.timesSeconds ?? [])].sort((a, b) => a - b)).toEqual(reps?.timesSeconds);
    expect(unison?.lanes.map(({ x }) => x)).toEqual(unison?.lanes.map(({ x }) => x).sort((a, b) => a - b));
    expect(new Set(cards.map(({ text }) => text)).size).toBe(1);
    expect(own?.milliseconds).toBeGreaterThan(100);
    expect(own?.cpuMilliseconds).toBeGreaterThan(100);
  });

  test('goes by the counting rule and the tempo that are asked for, and refuses others', async () => {
    const bySide = readAll(
      await routemark([
        ...['evidence', place('squad.mp4'), '--rule', 'side', '--tempo', '1,6'],
        ...['--performers', '2', '--json'],
      ]),
    );
    expect(bySide[0]?.unison?.lanes).toHaveLength(2);
    expect(Math.abs((bySide[0]?.reps.count ?? 0) - 2 * (TRUTH?.reps ?? 0))).toBeLessThanOrEqual(2);
    const outside = await routemark(['evidence', place('squad.mp4'), '--tempo', '0.3,0.5', '--json']);
    const cycle = readAll(outside)[0]?.reps.cycleSeconds ?? null;
    expect(cycle === null || cycle < 0.75).toBe(true);
    for (const wrong of [
      ['--rule', 'half'],
      ['--tempo', '4,1'],
      ['--tempo', 'fast'],
      ['--tempo', '0,3'],
      ['--performers', '7'],
      ['--performers', 'a few'],
    ]) {
      const refused = await routemark(['evidence', place('squad.mp4'), ...wrong]);
      expect(refused).toMatchObject({ code: 2, stdout: '' });
      expect(refused.stderr).toMatch(/“cycle” or “side”|two lengths in seconds|a number from 1 to 6/);
    }
  });
});

describe('evidence of whatever squads hand in', () => {
  test('reads every kind of video that ffmpeg reads, upright phones too', async () => {
    const from = ['-i', place('squad.mp4')];
    await call(...from, '-c', 'copy', place('a.mkv'));
    // As phones store an upright film: lying on its side, with the turn that brings it back.
    await call(
      ...from,
      '-vf',
      'transpose=clock',
      '-c:v',
      'libx264',
      '-preset',
      'ultrafast',
      place('lying.mov'),
    );
    await call('-i', place('lying.mov'), '-c', 'copy', '-metadata:s:v', 'rotate=90', place('phone.mov'));
    await call(...from, '-vf', 'scale=480:-2', '-c:v', 'mjpeg', '-q:v', '5', place('a.avi'));
    await call(...from, '-vf', 'scale=240:-2,fps=10', place('a.gif'));
    await call(...from, '-vf', 'scale=320:-2', '-c:v', 'libvpx', '-deadline', 'realtime', place('a.webm'));
    const names = ['a.mkv', 'phone.mov', 'a.avi', 'a.gif', 'a.webm'];
    const end = await routemark(['evidence', ...names.map(place), '--json']);
    expect(end.code).toBe(0);
    const all = readAll(end);
    expect(all.map(({ file }) => path.basename(file))).toEqual(names);
    for (const { file, problems, reps } of all) {
      expect(problems, file).toEqual([]);
      expect(Math.abs((reps.count ?? 0) - (TRUTH?.reps ?? 0)), file).toBeLessThanOrEqual(1);
    }
  });

  test('says what is wrong with each file that is none, and does the others', async () => {
    await mkdir(place('clips'));
    await writeFile(place('clips/no film.mp4'), 'Laps: 2, 2, 1.');
    await writeFile(place('clips/empty.mov'), '');
    await call('-f', 'lavfi', '-i', 'sine=duration=2', place('clips/sound.mp4'));
    // Of a photo's new format, an ffmpeg of these years reads no picture: ISO/IEC 23008-12, ftyp with the brand heic.
    await writeFile(
      place('clips/photo.heic'),
      Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic\0\0\0\x08mdat', 'latin1'),
    );
    await call('-i', place('squad.mp4'), '-t', '6', '-c', 'copy', place('clips/index last.mp4'));
    await call(
      '-i',
      place('squad.mp4'),
      '-t',
      '6',
      '-c',
      'copy',
      '-movflags',
      'faststart',
      place('clips/half.mp4'),
    );
    for (const name of ['clips/index last.mp4', 'clips/half.mp4']) {
      await truncate(place(name), Math.round((await stat(place(name))).size / 2));
    }
    const end = await routemark(['evidence', place('gone.mp4'), place('clips'), place('a.mkv'), '--json']);
    expect(end.code).toBe(1);
    expect(end.stderr).toContain(`There is nothing at ${place('gone.mp4')}.`);
    const all = readAll(end);
    const codes = Object.fromEntries(
      all.map(({ file, problems }) => [path.basename(file), problems.map(({ code }) => code)]),
    );
    expect(codes).toEqual({
      'a.mkv': [],
      'empty.mov': ['decode-failed'],
      'half.mp4': ['decode-cut-short'],
      'index last.mp4': ['decode-failed'],
      'no film.mp4': ['decode-failed'],
      'photo.heic': ['decode-failed'],
      'sound.mp4': ['decode-failed'],
    });
    const half = all.find(({ file }) => file.endsWith('half.mp4'));
    expect(half?.problems[0]?.what).toMatch(/^Its pictures end at .* before its time\.$/);
    for (const { reps, unison, problems } of all.filter((one) => one.problems[0]?.code === 'decode-failed')) {
      expect({ reps: reps.count, unison }).toEqual({ reps: null, unison: null });
      expect(problems[0]?.todo).toMatch(/Copy it again/);
    }
  });

  test('cannot be had of nothing', async () => {
    await mkdir(place('no clips'));
    const empty = await routemark(['evidence', place('no clips'), '--json']);
    expect(empty).toEqual({ code: 2, stdout: '', stderr: 'There is no clip in what was named.\n' });
    const gone = await routemark(['evidence', place('gone.mp4')]);
    expect(gone.code).toBe(2);
    expect(gone.stderr).toContain('There is nothing at');
  });
});
