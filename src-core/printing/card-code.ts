import { buildQrSymbol, type QrLevel } from '../platform/qr-symbol.ts';

/** A code as it is printed or shown: what it says, how it is written, and from how far it is read. */
export interface CardCode {
  readonly text: string;
  readonly level: QrLevel;
  /** Modules along one side. */
  readonly modules: number;
  /** Width of the symbol without its quiet zone. */
  readonly widthMm: number;
  /** Farthest that a tablet should be held from it. */
  readonly distanceMetres: number;
}

/**
 * A code is read from ten times its width: the usual figure of the printing trade, not in ISO/IEC 18004 itself
 * (common practice).
 */
const WIDTHS_AWAY = 10;

/**
 * Widths from which level H must still be read to be chosen. Measured on damaged codes printed equally wide and filmed
 * from ten widths and from five: of those with an address of usual length, H (49 modules, from eight widths) reads 0.75
 * and Q 0.65; without an address 0.40 and 0.35.
 */
const WIDTHS_OF_HIGH = 8;

/** Pixels a module at that distance. Three are needed (measured with the reader in use); the fourth is for blur. */
const MODULE_PIXELS = 4;

/** Pixels of a filmed picture's width over metres seen at one metre: 1080p through a lens of 60° (common practice). */
const PIXELS_PER_METRE = 1920 / (2 * Math.tan(Math.PI / 6));

/**
 * Chooses how a code is written at a width. Level H, which a third of the symbol may be lost of, as long as its finer
 * modules are still told apart from eight widths away; else Q, held nearer where that is needed.
 */
export function buildCardCode(text: string, widthMm: number): CardCode {
  const [high, quartile] = (['H', 'Q'] as const).map((level) => measure(text, level, widthMm));
  if (!high || !quartile) throw new Error('two levels');
  const isFine = high.distanceMetres < floorTo(widthMm / 1000, WIDTHS_OF_HIGH);
  return isFine ? quartile : high;
}

function measure(text: string, level: QrLevel, widthMm: number): CardCode {
  const modules = buildQrSymbol(text, level).size;
  const widths = Math.min(WIDTHS_AWAY, PIXELS_PER_METRE / (modules * MODULE_PIXELS));
  return { text, level, modules, widthMm, distanceMetres: floorTo(widthMm / 1000, widths) };
}

/** Whole decimetres, never more than so many widths. */
function floorTo(widthMetres: number, widths: number): number {
  return Math.floor(widthMetres * widths * 10 + 1e-9) / 10;
}
