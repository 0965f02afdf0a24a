import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader';
import type { CardSearchProblem } from '../evidence/card-search-problem.ts';
import type { CardReading } from '../evidence/card-vote.ts';
import type { LumaFrame } from '../evidence/luma-frame.ts';

/**
 * Every effort, for a missed card costs the teacher a look. Plain QR codes alone: their small and oblong
 * relatives are never printed by us and are more easily seen where there is nothing.
 */
const OPTIONS: ReaderOptions = {
  formats: ['QRCodeModel2'],
  tryHarder: true,
  tryRotate: true,
  tryInvert: true,
  tryDownscale: true,
  returnErrors: false,
};

/** The codes of a picture, each with the picture's time, or why the reader could not be started. */
export type PictureCodes =
  | { readonly ok: true; readonly readings: readonly CardReading[] }
  | { readonly ok: false; readonly problem: CardSearchProblem };

/** Looks for codes in one picture of a clip. */
export async function findCodes(frame: LumaFrame): Promise<PictureCodes> {
  try {
    const texts = await readCodes(frame);
    return { ok: true, readings: texts.map((text) => ({ text, atSeconds: frame.atSeconds })) };
  } catch (error) {
    return { ok: false, problem: { code: 'card-reader-failed', detail: String(error) } };
  }
}

let ready: Promise<unknown> | null = null;

/** The texts of all QR codes in a picture, possibly none. Rejects where the reader itself cannot be started. */
export async function readCodes(frame: LumaFrame): Promise<readonly string[]> {
  ready ??= loadReader();
  await ready;
  const found = await readBarcodes(wrapAsPgm(frame), OPTIONS);
  return found.filter(({ isValid, text }) => isValid && text !== '').map(({ text }) => text);
}

/** Starts the reader from the wasm file in node_modules; left alone, it would be fetched from the network. */
async function loadReader(): Promise<unknown> {
  const path = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  const bytes = await readFile(path);
  return prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(bytes).buffer },
    fireImmediately: true,
  });
}

/** A binary PGM file: one byte a pixel, where image data would need four. */
function wrapAsPgm({ width, height, luma }: LumaFrame): Uint8Array<ArrayBuffer> {
  const header = new TextEncoder().encode(`P5\n${width} ${height}\n255\n`);
  const file = new Uint8Array(header.length + luma.length);
  file.set(header);
  file.set(luma, header.length);
  return file;
}
