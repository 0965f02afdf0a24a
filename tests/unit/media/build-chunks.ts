import { join, type Part, zeros } from './build-boxes.ts';

function le32(value: number): Uint8Array {
  return Uint8Array.of(value, value >>> 8, value >>> 16, value >>> 24);
}

export function chunk(type: string, ...parts: readonly Part[]): Uint8Array {
  const body = join(...parts);
  return join(type, le32(body.length), body, zeros(body.length % 2));
}

export function list(form: string, ...parts: readonly Part[]): Uint8Array {
  return chunk('LIST', form, ...parts);
}

/** An AVI file of 300 frames at 25 a second, with something more in its header list. */
export function avi(...inHeader: readonly Part[]): Uint8Array {
  const avih = chunk('avih', le32(40_000), zeros(12), le32(300), zeros(36));
  const strl = list('strl', chunk('strh', 'vids', 'MJPG', zeros(48)));
  return chunk('RIFF', 'AVI ', list('hdrl', avih, strl, ...inHeader), list('movi', zeros(64)));
}
