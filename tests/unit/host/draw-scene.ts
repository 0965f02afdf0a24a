import QRCode from 'qrcode';
import type { LumaFrame } from '../../../src-core/evidence/luma-frame.ts';
import { type Random, seededRandom } from '../../../src-core/platform/seeded-random.ts';

/** A card in a picture. */
export interface SceneCard {
  readonly text: string;
  readonly pixelsPerModule: number;
  readonly turnDegrees?: number;
  /** Foreshortening: how much smaller the far edge is than the near one, 0 to 1. */
  readonly tilt?: number;
  readonly isInverted?: boolean;
}

/** What stands in a picture. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly card?: SceneCard | null;
  /** Standard deviation of the blur, in pixels. */
  readonly blur?: number;
  /** Standard deviation of sensor noise, in grey levels. */
  readonly noise?: number;
  readonly seed?: number;
  readonly background?: 'blobs' | 'noise' | 'stripes' | 'squares' | 'rings';
}

/** Draws a picture: a background, a card with its quiet zone in perspective, blur, noise. */
export function drawScene(scene: Scene): LumaFrame {
  const { width, height, blur = 0, noise = 0, seed = 1 } = scene;
  const random = seededRandom(seed);
  const grey = drawBackground(scene, random);
  if (scene.card) drawCard(grey, width, scene.card);
  if (blur > 0) soften(grey, width, blur);
  const luma = new Uint8Array(width * height);
  for (let at = 0; at < luma.length; at++) luma[at] = clamp((grey[at] ?? 0) + noise * drawNormal(random));
  return { width, height, atSeconds: 0, luma };
}

function clamp(value: number): number {
  return Math.max(0, Math.min(255, Math.round(value)));
}

/** Sum of uniform numbers: near enough to normal for sensor noise. */
function drawNormal(random: Random): number {
  return (random() + random() + random() + random() - 2) * Math.sqrt(3);
}

function drawBackground({ width, height, background = 'blobs' }: Scene, random: Random): Float32Array {
  const grey = new Float32Array(width * height);
  const blobs = Array.from({ length: 12 }, () => ({
    x: random() * width,
    y: random() * height,
    size: (0.05 + random() * 0.2) * width,
    level: random() * 160 - 80,
  }));
  const cell = 4 + Math.floor(random() * 12);
  const slope = random() * 2 - 1;
  const levels = Array.from({ length: 4096 }, () => random() * 255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      grey[y * width + x] = paint(x, y);
    }
  }
  if (background === 'blobs') for (const blob of blobs) addBlob(grey, width, blob);
  function paint(x: number, y: number): number {
    if (background === 'noise') return random() * 255;
    if (background === 'stripes') return Math.sin((x + slope * y) / cell) > 0 ? 230 : 25;
    if (background === 'squares') {
      const row = Math.floor(y / cell);
      return (levels[(row * 97 + Math.floor(x / cell)) % levels.length] ?? 0) > 127 ? 235 : 20;
    }
    if (background === 'rings') return nestSquares(x % (cell * 14), y % (cell * 14), cell);
    return 120;
  }
  return grey;
}

/** A soft spot, lighter or darker than what is round it. */
interface Blob {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly level: number;
}

/** Adds a bell of brightness, which is a bell across times a bell down. */
function addBlob(grey: Float32Array, width: number, { x, y, size, level }: Blob): void {
  const across = drawBell(width, x, size);
  const down = drawBell(grey.length / width, y, size);
  for (let at = 0; at < grey.length; at++) {
    const column = at % width;
    const row = (at - column) / width;
    grey[at] = (grey[at] as number) + level * (across[column] as number) * (down[row] as number);
  }
}

function drawBell(length: number, middle: number, size: number): Float64Array {
  return Float64Array.from({ length }, (_, at) => Math.exp(-(((at - middle) / size) ** 2)));
}

/** Squares within squares, as in a code's corners, with nothing between them. */
function nestSquares(x: number, y: number, cell: number): number {
  const ring = Math.max(Math.abs(x / cell - 5), Math.abs(y / cell - 5));
  return ring < 1.5 || (ring >= 2.5 && ring < 3.5) ? 20 : 235;
}

function drawCard(grey: Float32Array, width: number, card: SceneCard): void {
  const { modules } = QRCode.create(card.text, { errorCorrectionLevel: 'M' });
  const height = grey.length / width;
  const turn = ((card.turnDegrees ?? 0) * Math.PI) / 180;
  const half = modules.size / 2 + 4;
  const reach = Math.ceil(half * card.pixelsPerModule * 1.8);
  const [dark, light] = card.isInverted ? [225, 30] : [30, 225];
  const isDark = (across: number, down: number): number | null => {
    const row = Math.floor(down + modules.size / 2);
    const column = Math.floor(across + modules.size / 2);
    if (Math.max(Math.abs(across), Math.abs(down)) > half) return null;
    const isInside = row >= 0 && column >= 0 && row < modules.size && column < modules.size;
    return isInside && modules.get(row, column) === 1 ? dark : light;
  };
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const sample = (x: number, y: number): number | null => {
    const depth = 1 + ((card.tilt ?? 0) * y) / (half * card.pixelsPerModule * 2);
    const flatX = x / card.pixelsPerModule / depth;
    const flatY = y / card.pixelsPerModule / depth;
    return isDark(flatX * cos + flatY * sin, flatY * cos - flatX * sin);
  };
  for (let y = -reach; y < reach; y++) {
    for (let x = -reach; x < reach; x++) {
      const column = Math.floor(width / 2) + x;
      const row = Math.floor(height / 2) + y;
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      const [a, b] = [sample(x - 0.25, y - 0.25), sample(x + 0.25, y - 0.25)];
      const [c, d] = [sample(x - 0.25, y + 0.25), sample(x + 0.25, y + 0.25)];
      if (a === null || b === null || c === null || d === null) continue;
      grey[row * width + column] = (a + b + c + d) / 4;
    }
  }
}

/** A Gaussian blur, across and then down; the picture's edge repeats outwards. */
function soften(grey: Float32Array, width: number, sigma: number): void {
  const reach = Math.ceil(sigma * 3);
  const bell = drawBell(2 * reach + 1, reach, sigma * Math.SQRT2);
  const whole = bell.reduce((sum, share) => sum + share, 0);
  const height = grey.length / width;
  const across = new Float64Array(grey.length);
  for (let at = 0; at < grey.length; at++) {
    const column = at % width;
    for (let step = -reach; step <= reach; step++) {
      const x = Math.max(0, Math.min(width - 1, column + step));
      across[at] =
        (across[at] as number) + (bell[step + reach] as number) * (grey[at - column + x] as number);
    }
  }
  for (let at = 0; at < grey.length; at++) {
    const column = at % width;
    const row = (at - column) / width;
    let sum = 0;
    for (let step = -reach; step <= reach; step++) {
      const y = Math.max(0, Math.min(height - 1, row + step));
      sum += (bell[step + reach] as number) * (across[y * width + column] as number);
    }
    grey[at] = sum / whole ** 2;
  }
}
