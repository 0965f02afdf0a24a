import { splitAtHyphens } from '../../platform/line-pieces.ts';
import { type Hand, measureRun, type Run, setText } from './paper-fonts.ts';

/** Points, the unit of type, in one millimetre. */
export const MM = 72 / 25.4;

/** How a text may be set. */
export interface Setting {
  readonly hand: Hand;
  /** Type sizes in points: the one wanted, and the smallest that still serves. */
  readonly size: number;
  readonly smallest: number;
  /** Distance of lines in units of the size. */
  readonly leading: number;
}

/** A text broken into lines that fit. */
export interface FittedText {
  readonly size: number;
  readonly lines: readonly (readonly Run[])[];
  readonly heightMm: number;
}

/** Step by which type shrinks, in points. */
const STEP = 0.5;

/**
 * Sets a text into a box, as large as wanted or as small as need be; null where even the smallest does not fit. Lines
 * break at spaces and after hyphens within a word; a word is never cut.
 */
export function fitText(
  text: string,
  box: { readonly widthMm: number; readonly heightMm: number },
  setting: Setting,
): FittedText | null {
  const pieces = measurePieces(text, setting.hand);
  for (let size = setting.size; size >= setting.smallest - 1e-9; size -= STEP) {
    const lines = breakLines(pieces, (box.widthMm * MM) / size);
    const heightMm = lines ? (lines.length * size * setting.leading) / MM : Number.POSITIVE_INFINITY;
    if (lines && heightMm <= box.heightMm + 1e-6) {
      return { size, heightMm, lines: lines.map((line) => setText(line, setting.hand).runs) };
    }
  }
  return null;
}

/**
 * The room that a text takes in a width: as large as wanted, smaller where it would take more than so many lines, and
 * in its smallest type as many lines as it takes. Zero for no text; what one word alone overflows is left to be found
 * when it is drawn.
 */
export function measureHeight(said: string, widthMm: number, setting: Setting, mostLines = 2): number {
  if (said.trim() === '') return 0;
  const heightOf = (lines: number, size: number) => (lines * size * setting.leading) / MM + 0.01;
  for (let size = setting.size; size >= setting.smallest - 1e-9; size -= STEP) {
    const heightMm = heightOf(mostLines, size);
    const fitted = fitText(said, { widthMm, heightMm }, { ...setting, size, smallest: size });
    if (fitted) return fitted.heightMm + 0.01;
  }
  const { smallest } = setting;
  const fitted = fitText(said, { widthMm, heightMm: 1e6 }, { ...setting, size: smallest });
  return fitted ? fitted.heightMm + 0.01 : heightOf(1, smallest);
}

/** A word, or what a hyphen parts of it. */
interface Piece {
  readonly text: string;
  /** Nothing stands between it and the piece before, where both are on one line. */
  readonly isJoined: boolean;
  /** In units of the size. */
  readonly width: number;
}

function measurePieces(text: string, hand: Hand): readonly Piece[] {
  return text
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) =>
      splitAtHyphens(word).map((piece, at) => ({
        text: piece,
        isJoined: at > 0,
        width: measureText(piece, hand),
      })),
    );
}

/** Width of a text on one line, in units of the type's size. */
function measureText(text: string, hand: Hand): number {
  return setText(text, hand).runs.reduce((sum, run) => sum + measureRun(run), 0);
}

/** Fills lines piece by piece; null where one piece is wider than a line. */
function breakLines(pieces: readonly Piece[], width: number): readonly string[] | null {
  const lines: { text: string; width: number }[] = [];
  for (const piece of pieces) {
    if (piece.width > width) return null;
    const line = lines.at(-1);
    const space = piece.isJoined ? 0 : 0.26;
    if (line && line.width + space + piece.width <= width) {
      line.text += `${piece.isJoined ? '' : ' '}${piece.text}`;
      line.width += space + piece.width;
    } else lines.push({ text: piece.text, width: piece.width });
  }
  return lines.map(({ text }) => text);
}
