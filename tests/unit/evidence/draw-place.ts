import type { ColourFrame } from '../../../src-core/evidence/colour-frame.ts';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';

/** A place to be drawn: blocks of colour that follow from the seed, seen a little from the side, lit so and so. */
export interface DrawnPlace {
  readonly seed: number;
  readonly width?: number;
  readonly height?: number;
  /** Pixels by which the camera stands further left. */
  readonly right?: number;
  /** Added to the luma of every pixel. */
  readonly light?: number;
  /** A person: a block of one colour, from x on, 12 pixels wide. */
  readonly person?: { readonly x: number; readonly yuv: readonly [number, number, number] };
  readonly atSeconds?: number;
}

const BLOCK = 16;

/** Draws a place as a small colour picture. */
export function drawPlace(place: DrawnPlace): ColourFrame {
  const { seed, width = 128, height = 72, right = 0, light = 0, person, atSeconds = 0 } = place;
  const random = seededRandom(seed);
  const blocks = Array.from({ length: 20 * 20 }, () => [
    40 + 160 * random(),
    90 + 76 * random(),
    90 + 76 * random(),
  ]);
  const getBlock = (x: number, y: number) => {
    const column = Math.floor((x + right + 64) / BLOCK);
    const row = Math.floor((y + BLOCK) / BLOCK);
    return blocks[(row * 20 + column) % blocks.length] ?? [128, 128, 128];
  };
  const isPerson = (x: number, y: number) =>
    person !== undefined && x >= person.x && x < person.x + 12 && y >= height / 4 && y < (height * 3) / 4;
  const yuv = new Uint8Array((width * height * 3) / 2);
  const sizes = [1, 2, 2] as const;
  let at = 0;
  sizes.forEach((step, plane) => {
    for (let y = 0; y < height; y += step) {
      for (let x = 0; x < width; x += step) {
        const value = isPerson(x, y) ? person?.yuv[plane] : getBlock(x, y)[plane];
        yuv[at] = Math.max(16, Math.min(240, (value ?? 128) + (plane === 0 ? light : 0)));
        at += 1;
      }
    }
  });
  return { width, height, atSeconds, yuv };
}
