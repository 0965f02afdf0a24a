/** A colour in CIELAB under D65: lightness 0 to 100, then green to red and blue to yellow, about -100 to 100. */
export type Lab = readonly [lightness: number, a: number, b: number];

/** Colour channels of sRGB, 0 to 255, fractions allowed. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** White of sRGB — IEC 61966-2-1, D65. */
const WHITE = [0.95047, 1, 1.08883] as const;

/** CIE 15, "CIELAB": (6/29)³ and the slope of the straight piece below it. */
const EDGE = (6 / 29) ** 3;
const SLOPE = (29 / 6) ** 2 / 3;

/** sRGB to CIELAB — IEC 61966-2-1 for the curve and the primaries, CIE 15 for the rest. */
export function convertToLab(rgb: Rgb): Lab {
  const [red, green, blue] = rgb.map(linearise) as [number, number, number];
  const x = bend((0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / WHITE[0]);
  const y = bend((0.2126729 * red + 0.7151522 * green + 0.072175 * blue) / WHITE[1]);
  const z = bend((0.0193339 * red + 0.119192 * green + 0.9503041 * blue) / WHITE[2]);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Studio-range YUV with the coefficients of ITU-R BT.601 to sRGB, clipped to 0 to 255. */
export function convertToRgb(luma: number, blueness: number, redness: number): Rgb {
  const y = (luma - 16) * (255 / 219);
  const u = (blueness - 128) * (255 / 224);
  const v = (redness - 128) * (255 / 224);
  return [clip(y + 1.402 * v), clip(y - 0.344136 * u - 0.714136 * v), clip(y + 1.772 * u)];
}

/** `#RRGGBB` as sRGB; black where it is not one. */
export function parseHexColour(text: string): Rgb {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text);
  const [red = 0, green = 0, blue = 0] = (found?.slice(1) ?? []).map((part) => Number.parseInt(part, 16));
  return [red, green, blue];
}

function linearise(channel: number): number {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function bend(value: number): number {
  return value > EDGE ? Math.cbrt(value) : SLOPE * value + 4 / 29;
}

function clip(value: number): number {
  return Math.min(255, Math.max(0, value));
}
