import type { BoundedBytes } from '../bounded-bytes.ts';
import { readText } from '../byte-text.ts';
import type { Element } from './walk-elements.ts';

/** An unsigned integer of up to 8 bytes — RFC 8794 §7.2; no bytes mean 0. */
export async function readUnsigned(bytes: BoundedBytes, element: Element): Promise<number> {
  const body = await readBody(bytes, element, 8);
  return body.reduce((value, byte) => value * 256 + byte, 0);
}

/** A float of 4 or 8 bytes — RFC 8794 §7.3; null for any other length. */
export async function findFloat(bytes: BoundedBytes, element: Element): Promise<number | null> {
  const body = await readBody(bytes, element, 9);
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  if (body.length === 4) return view.getFloat32(0);
  return body.length === 8 ? view.getFloat64(0) : null;
}

/** A string — RFC 8794 §7.4 and §7.5: ASCII or UTF-8, at most 1,024 bytes of it. */
export async function readString(bytes: BoundedBytes, element: Element): Promise<string> {
  return readText(await readBody(bytes, element, 1024));
}

async function readBody(bytes: BoundedBytes, element: Element, mostBytes: number): Promise<Uint8Array> {
  return bytes.read(element.bodyStart, Math.min(mostBytes, element.end - element.bodyStart));
}
