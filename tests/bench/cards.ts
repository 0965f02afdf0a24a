import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import QRCode from 'qrcode';
import type { LumaFrame } from '../../src-core/evidence/luma-frame.ts';
import { readCodes } from '../../src-core/host/card-reader.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { drawScene, type Scene } from '../unit/host/draw-scene.ts';
import type { BenchReport } from './report.ts';

const TEXT = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });

const WIDTH = 480;
const HEIGHT = 270;

/** Pixels a module measured where the tilt has made it narrowest. */
const PIXELS = [3, 4, 6] as const;
const TILTS = [0, 20, 40] as const;
const TURNS = 16;
const BLURS = [0, 0.8] as const;
const NOISE = 7;

const CODELESS = 2000;

/**
 * Prints how many station cards are read at three pixels a module and more, over noise, blur, tilt and every
 * rotation, beside Debian's zbar on the same pictures; and how many readings 2,000 pictures without a code give.
 */
export async function benchCards({ print, hold }: BenchReport): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-cards-'));
  try {
    const hasZbar = await promisify(execFile)('zbarimg', ['--version']).then(
      () => true,
      () => false,
    );
    let [drawn, ours, wrong, theirs] = [0, 0, 0, 0];
    for (const pixels of PIXELS) {
      for (const tilt of TILTS) {
        const pictures = drawAll(pixels, tilt);
        const texts = await Promise.all(pictures.map(readCodes));
        drawn += pictures.length;
        ours += texts.filter((read) => read.includes(TEXT)).length;
        wrong += texts.flat().filter((text) => text !== TEXT).length;
        if (hasZbar) theirs += await countByZbar(pictures, folder);
      }
    }
    const what = `cards of 3 pixels a module and more, ${drawn} pictures over noise, blur, tilt to 40°, all rotations`;
    hold({ what: `${what}: share read`, figure: ours / drawn, bar: ['at least', 0.99] });
    hold({ what: `${what}: wrong`, figure: wrong, bar: ['at most', 0], digits: 0 });
    if (!hasZbar) print('zbar is not installed: not compared');
    else hold({ what: `${what}: more than zbar`, figure: (ours - theirs) / drawn, bar: ['at least', 0] });
    hold({
      what: `readings in ${CODELESS} pictures without a code`,
      figure: await countFalse(),
      bar: ['at most', 0],
      digits: 0,
    });
  } finally {
    await rm(folder, { recursive: true });
  }
}

function drawAll(pixels: number, tilt: number): LumaFrame[] {
  return BLURS.flatMap((blur, at) =>
    Array.from({ length: TURNS }, (_, turn) =>
      drawTilted({
        pixels,
        tiltDegrees: tilt,
        turnDegrees: (turn * 360) / TURNS + 3,
        scene: { width: WIDTH, height: HEIGHT, seed: 1 + turn + 100 * at, noise: NOISE, blur },
      }),
    ),
  );
}

interface TiltedCard {
  readonly pixels: number;
  readonly tiltDegrees: number;
  readonly turnDegrees: number;
  readonly scene: Scene;
}

/** Eight card widths away, as a card held up at arm's length before a tablet. */
const DISTANCE_IN_CARDS = 8;

/** A card seen by a pinhole camera: tilted about an axis that follows from the seed, turned in its own plane. */
function drawTilted({ pixels, tiltDegrees, turnDegrees, scene }: TiltedCard): LumaFrame {
  const { modules } = QRCode.create(TEXT, { errorCorrectionLevel: 'M' });
  const clean = drawScene({ ...scene, noise: 0, blur: 0 });
  const grey = Float32Array.from(clean.luma);
  const [tilt, turn] = [tiltDegrees, turnDegrees].map((degrees) => (degrees * Math.PI) / 180) as [
    number,
    number,
  ];
  const axis = seededRandom(scene.seed ?? 1)() * Math.PI;
  const distance = modules.size * DISTANCE_IN_CARDS;
  const scale = pixels / Math.cos(tilt);
  const offsets = [-0.25, 0.25];
  const half = modules.size / 2 + 4;
  const look = (x: number, y: number): number | null => {
    // Into the tilt's own axes, back through the pinhole onto the card's plane, and out again.
    const along = (x * Math.cos(axis) + y * Math.sin(axis)) / scale;
    const across = (y * Math.cos(axis) - x * Math.sin(axis)) / scale;
    const down = across / (Math.cos(tilt) - (across * Math.sin(tilt)) / distance);
    const side = along * (1 + (down * Math.sin(tilt)) / distance);
    const [flatX, flatY] = [
      side * Math.cos(axis) - down * Math.sin(axis),
      side * Math.sin(axis) + down * Math.cos(axis),
    ];
    const u = flatX * Math.cos(turn) + flatY * Math.sin(turn);
    const v = flatY * Math.cos(turn) - flatX * Math.sin(turn);
    if (Math.max(Math.abs(u), Math.abs(v)) > half) return null;
    const [row, column] = [Math.floor(v + modules.size / 2), Math.floor(u + modules.size / 2)];
    const isInside = row >= 0 && column >= 0 && row < modules.size && column < modules.size;
    return isInside && modules.get(row, column) === 1 ? 35 : 220;
  };
  const reach = half * scale * 1.6;
  for (let at = 0; at < grey.length; at++) {
    const x = (at % WIDTH) - WIDTH / 2;
    const y = Math.floor(at / WIDTH) - HEIGHT / 2;
    if (Math.max(Math.abs(x), Math.abs(y)) > reach) continue;
    const parts = offsets.flatMap((up) => offsets.map((left) => look(x + left, y + up)));
    const seen = parts.filter((part) => part !== null);
    if (seen.length < parts.length) continue;
    grey[at] = seen.reduce((sum, part) => sum + part, 0) / seen.length;
  }
  return spoil(grey, scene);
}

/** Blur and noise over a drawn picture. */
function spoil(grey: Float32Array, { blur = 0, noise = 0, seed = 1 }: Scene): LumaFrame {
  const random = seededRandom(seed + 5000);
  const soft = blur > 0 ? soften(soften(grey, blur, 1), blur, WIDTH) : grey;
  const luma = Uint8Array.from(soft, (value) => {
    const grain = (random() + random() + random() + random() - 2) * Math.sqrt(3);
    return Math.max(0, Math.min(255, Math.round(value + noise * grain)));
  });
  return { width: WIDTH, height: HEIGHT, atSeconds: 0, luma };
}

function soften(grey: Float32Array, sigma: number, step: number): Float32Array {
  const shifts = [-3, -2, -1, 0, 1, 2, 3];
  const weights = shifts.map((shift) => Math.exp(-(shift ** 2) / (2 * sigma ** 2)));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return grey.map((own, at) =>
    shifts.reduce((sum, shift, index) => {
      return sum + ((weights[index] ?? 0) * (grey[at + shift * step] ?? own)) / whole;
    }, 0),
  );
}

async function countByZbar(pictures: readonly LumaFrame[], folder: string): Promise<number> {
  const files = await Promise.all(
    pictures.map(async ({ width, height, luma }, at) => {
      const file = path.join(folder, `${at}.pgm`);
      await writeFile(file, Buffer.concat([Buffer.from(`P5\n${width} ${height}\n255\n`), luma]));
      return file;
    }),
  );
  // It exits with 4 where one picture gave nothing; what it printed counts all the same.
  const said = await promisify(execFile)('zbarimg', ['-q', '--raw', '--nodbus', ...files]).catch(
    (error: { stdout?: string }) => ({ stdout: error.stdout ?? '' }),
  );
  return said.stdout.split('\n').filter((line) => line === TEXT).length;
}

/** Pictures of blobs, noise, stripes, squares and rings in turn. */
async function countFalse(): Promise<number> {
  const kinds = ['blobs', 'noise', 'stripes', 'squares', 'rings'] as const;
  let found = 0;
  for (let at = 0; at < CODELESS; at += 1) {
    const background = kinds[at % kinds.length] ?? 'blobs';
    const picture = drawScene({
      width: 480,
      height: 270,
      seed: at + 1,
      background,
      noise: at % 3 === 0 ? 6 : 0,
    });
    found += (await readCodes(picture)).length;
  }
  return found;
}
