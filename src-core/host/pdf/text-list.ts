import type { Said } from '../../printing/said.ts';
import { fitText, type Setting } from './fit-text.ts';
import { type Box, type Mark, text } from './marks.ts';

/** One line of a list; the sign before it is a number in a ring, a box to tick, a tick, or nothing. */
export interface ListItem {
  readonly said: Said;
  readonly sign: string;
}

/** Room between items, in millimetres. */
const GAP = 1.6;

/** Room of the signs, in millimetres. */
const SIGN_WIDTH = 8;

/**
 * A list in one size of type, as large as wanted or as small as need be for the whole to fit its box. Where it does not
 * fit in the smallest, its longest item is squeezed into a place too small for it, so that drawing reports that one.
 */
export function layOutList(box: Box, items: readonly ListItem[], setting: Setting): readonly Mark[] {
  const fitted = fitList(box, items, setting);
  if (fitted) return placeItems(box, items, fitted);
  const longest = items.toSorted((one, other) => other.said.text.length - one.said.text.length).slice(0, 1);
  return longest.map(({ said }) => text({ ...box, h: 0 }, said, setting));
}

/** A list in its one size of type, with the height of each item in millimetres. */
interface FittedList {
  readonly setting: Setting;
  readonly heights: readonly number[];
}

/** The largest size in which the whole list fits its box; null where it does not fit in the smallest. */
export function fitList(
  box: Pick<Box, 'w' | 'h'>,
  items: readonly ListItem[],
  setting: Setting,
): FittedList | null {
  for (let size = setting.size; size >= setting.smallest; size -= 0.5) {
    const heights = items.map(({ said }) => measureItem(said, box.w - SIGN_WIDTH, { ...setting, size }));
    const total = heights.reduce((sum, height) => sum + height + GAP, -GAP);
    if (total <= box.h) return { setting: { ...setting, size, smallest: size }, heights };
  }
  return null;
}

function measureItem(said: Said, widthMm: number, setting: Setting): number {
  const fitted = fitText(said.text, { widthMm, heightMm: 1e6 }, { ...setting, smallest: setting.size });
  return fitted?.heightMm ?? 1e6;
}

function placeItems(
  { x, y, w }: Box,
  items: readonly ListItem[],
  { setting, heights }: FittedList,
): readonly Mark[] {
  let top = y;
  return items.flatMap(({ said, sign }, at) => {
    const h = heights[at] ?? 0;
    const marks: Mark[] = [
      text({ x: x + SIGN_WIDTH, y: top, w: w - SIGN_WIDTH, h: h + 0.01 }, said, setting),
    ];
    if (sign === 'box') {
      marks.push({ kind: 'frame', box: { x: x + 0.2, y: top + 0.9, w: 4, h: 4 }, lineMm: 0.35, cutMm: 0 });
    } else if (sign === 'tick') {
      marks.push({
        kind: 'sign',
        box: { x: x + 0.2, y: top + 0.6, w: 5, h: 5 },
        shape: 'tick',
        isWhite: false,
      });
    } else if (sign !== '')
      marks.push({ kind: 'ring', box: { x, y: top + 0.2, w: 5.6, h: 5.6 }, text: sign });
    top += h + GAP;
    return marks;
  });
}
