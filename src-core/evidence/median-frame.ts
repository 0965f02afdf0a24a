import type { ColourFrame } from './colour-frame.ts';

/**
 * The picture of what stays: each pixel's median over the frames, so that people who move on vanish. Frames of
 * another size than the first are left out. Null without frames.
 */
export function buildMedianFrame(frames: readonly ColourFrame[]): ColourFrame | null {
  const [first] = frames;
  if (!first) return null;
  const alike = frames.filter(({ width, height }) => width === first.width && height === first.height);
  const yuv = new Uint8Array(first.yuv.length);
  const values = new Uint8Array(alike.length);
  const middle = alike.length >> 1;
  for (let at = 0; at < yuv.length; at++) {
    for (let index = 0; index < values.length; index++) values[index] = alike[index]?.yuv[at] ?? 0;
    yuv[at] = values.sort()[middle] ?? 0;
  }
  return { ...first, yuv };
}
