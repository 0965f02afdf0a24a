import qrcode from 'qrcode';

/** Share of a symbol that may be lost and still be read: Q about 25 %, H about 30 % (ISO/IEC 18004, 7.5.1). */
export type QrLevel = 'Q' | 'H';

/** A QR symbol as modules; the quiet zone around it is the drawer's. */
export interface QrSymbol {
  /** Modules along one side: 21, 25, 29 and so on. */
  readonly size: number;
  /** 1 for a dark module, row by row. */
  readonly modules: Uint8Array;
}

/** Width of the light margin that a symbol needs on every side, in modules (ISO/IEC 18004, 6.3.8). */
export const QUIET_MODULES = 4;

/** Encodes a text; the same text always gives the same symbol. */
export function buildQrSymbol(text: string, level: QrLevel): QrSymbol {
  const { modules } = qrcode.create(text, { errorCorrectionLevel: level });
  return { size: modules.size, modules: modules.data };
}

/** The dark modules of a symbol as one SVG path, a module a unit, from the symbol's own corner; runs of a row in one. */
export function buildQrPath({ size, modules }: QrSymbol): string {
  let path = '';
  for (let row = 0; row < size; row++) {
    for (let from = 0; from < size; from++) {
      let to = from;
      while (to < size && modules[row * size + to] === 1) to++;
      if (to === from) continue;
      path += `M${from} ${row}h${to - from}v1h${from - to}z`;
      from = to;
    }
  }
  return path;
}
