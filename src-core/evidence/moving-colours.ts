import { convertToLab, convertToRgb, type Lab } from '../platform/cielab.ts';
import type { ColourFrame } from './colour-frame.ts';

/** One colour among those that move in a clip. */
export interface MovingColour {
  /** CIELAB, whole numbers. */
  readonly lab: Lab;
  /** Share of all that moves, 0 to 1. */
  readonly share: number;
}

/** A pixel moves where it differs so much from what stays: luma steps, or steps of a colour difference. */
const MOVES = { luma: 24, colour: 10 } as const;

/** Colours this near are one: lightness, a and b. */
const BIN = { lightness: 12, colour: 8 } as const;

/** Colours with less than this share are left out. */
const LEAST_SHARE = 0.005;

const MOST_COLOURS = 40;

/**
 * The colours of what moves in a clip, commonest first: pinnies among skin, shorts and shadows. Counted over pixels
 * that differ from the still background; nothing of who or where is kept. Empty where nothing moves.
 */
export function listMovingColours(frames: readonly ColourFrame[], background: ColourFrame): MovingColour[] {
  const bins = new Map<string, { sum: [number, number, number]; count: number }>();
  let moving = 0;
  for (const frame of frames) {
    if (frame.width !== background.width || frame.height !== background.height) continue;
    forEachMoving(frame, background, (lab) => {
      moving += 1;
      const [lightness, a, b] = lab;
      const steps = [lightness / BIN.lightness, a / BIN.colour, b / BIN.colour].map(Math.round);
      const key = steps.join(' ');
      const bin = bins.get(key) ?? { sum: [0, 0, 0], count: 0 };
      bins.set(key, bin);
      bin.count += 1;
      bin.sum = [bin.sum[0] + lightness, bin.sum[1] + a, bin.sum[2] + b];
    });
  }
  return [...bins.values()]
    .sort((one, other) => other.count - one.count)
    .slice(0, MOST_COLOURS)
    .filter(({ count }) => count >= LEAST_SHARE * moving)
    .map(({ sum, count }) => ({
      // Adding 0 makes -0, which no file can hold, a 0.
      lab: [Math.round(sum[0] / count) + 0, Math.round(sum[1] / count) + 0, Math.round(sum[2] / count) + 0],
      share: Math.round((count / moving) * 1e4) / 1e4,
    }));
}

/** Visits each block of 2 × 2 pixels (they share their colour) that differs from the background. */
function forEachMoving(frame: ColourFrame, background: ColourFrame, visit: (lab: Lab) => void): void {
  const { width, height, yuv } = frame;
  const across = width / 2;
  const area = width * height;
  const quarter = across * (height / 2);
  for (let at = 0; at < quarter; at++) {
    const corner = Math.floor(at / across) * 2 * width + (at % across) * 2;
    const luma = averageFour(yuv, corner, width);
    const blueness = yuv[area + at] ?? 128;
    const redness = yuv[area + quarter + at] ?? 128;
    const moves =
      Math.abs(luma - averageFour(background.yuv, corner, width)) > MOVES.luma ||
      Math.abs(blueness - (background.yuv[area + at] ?? 128)) > MOVES.colour ||
      Math.abs(redness - (background.yuv[area + quarter + at] ?? 128)) > MOVES.colour;
    if (moves) visit(convertToLab(convertToRgb(luma, blueness, redness)));
  }
}

function averageFour(plane: Uint8Array, corner: number, width: number): number {
  const upper = (plane[corner] ?? 0) + (plane[corner + 1] ?? 0);
  return (upper + (plane[corner + width] ?? 0) + (plane[corner + width + 1] ?? 0)) / 4;
}
