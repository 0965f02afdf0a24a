import type { CardCode } from '../../printing/card-code.ts';
import type { PaperSquad } from '../../printing/paper-pinnie.ts';
import type { Said } from '../../printing/said.ts';
import type { Setting } from './fit-text.ts';

/**
 * A place on the block, from its upper left corner, in millimetres. The block is 190 by 259 and stands in the middle
 * of the page, so that one drawing fits A4 and Letter.
 */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** The drawn part of a page, in millimetres. */
export const BLOCK: Box = { x: 0, y: 0, w: 190, h: 259 };

/** One thing on a page. */
export type Mark =
  | {
      readonly kind: 'text';
      readonly box: Box;
      readonly said: Said;
      readonly setting: Setting;
      readonly align: 'left' | 'centre' | 'right';
      readonly stand: 'top' | 'middle' | 'bottom';
      readonly isWhite: boolean;
    }
  | { readonly kind: 'rule'; readonly box: Box; readonly isDashed: boolean }
  /** An outline; its corner at the lower right is cut off where it is a slip. Dashed: nobody stands behind it yet. */
  | {
      readonly kind: 'frame';
      readonly box: Box;
      readonly lineMm: number;
      readonly cutMm: number;
      readonly isDashed?: boolean;
    }
  /** A station's letter, white on ink. */
  | { readonly kind: 'plate'; readonly box: Box; readonly letter: string; readonly cutMm: number }
  | { readonly kind: 'ring'; readonly box: Box; readonly text: string }
  | { readonly kind: 'bib'; readonly box: Box; readonly squad: PaperSquad }
  /** White ground, for a figure on a picture. */
  | { readonly kind: 'paper'; readonly box: Box }
  /** A tick or a cross that fills its box. */
  | { readonly kind: 'sign'; readonly box: Box; readonly shape: 'tick' | 'cross'; readonly isWhite: boolean }
  /** From a slot to the clip that fills it: from the box's left edge at `from` to its right edge at `to`, below its top. */
  | {
      readonly kind: 'thread';
      readonly box: Box;
      readonly fromMm: number;
      readonly toMm: number;
      readonly lineMm: number;
    }
  /** A JPEG that fills its box. */
  | { readonly kind: 'picture'; readonly box: Box; readonly jpeg: Uint8Array }
  /** The box is the symbol's own; its quiet zone is kept free by the page. */
  | { readonly kind: 'code'; readonly box: Box; readonly code: CardCode };

/** A page laid out: what it holds, in the order of drawing. */
export interface Layout {
  readonly title: string;
  readonly marks: readonly Mark[];
}

/** Words of our own, which are in no field. */
export function ours(text: string): Said {
  return { text, field: '' };
}

/** How a text stands in its box, where that is not at its upper left corner in ink. */
export interface Standing {
  readonly align?: 'left' | 'centre' | 'right';
  readonly stand?: 'top' | 'middle' | 'bottom';
  readonly isWhite?: boolean;
}

/** A text in a box; see {@link Setting} for how it shrinks. */
export function text(box: Box, said: Said, setting: Setting, standing: Standing = {}): Mark {
  const { align = 'left', stand = 'top', isWhite = false } = standing;
  return { kind: 'text', box, said, setting, align, stand, isWhite };
}

/** A line across, as thick as its box is high. The field line under a head is 1.1 mm. */
export function rule(x: number, y: number, w: number, h: number): Mark {
  return { kind: 'rule', box: { x, y, w, h }, isDashed: false };
}

/**
 * No type is smaller than this, in points: what does not fit takes another line. What a child reads never gets as small
 * as what a teacher does. Common practice: 5 points is the least that a school's printer draws clearly.
 */
export const SMALLEST_TYPE = { teacher: 5, pupil: 7 } as const;

/** Words of one hand from one size down to another, in points. */
export function type(hand: Setting['hand'], size: number, smallest = size, leading = 1.25): Setting {
  return { hand, size, smallest, leading };
}
