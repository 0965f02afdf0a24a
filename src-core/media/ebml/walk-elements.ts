import type { BoundedBytes } from '../bounded-bytes.ts';
import { readElementId, readElementSize } from './element-size.ts';

/** One EBML element — RFC 8794 §6: id, size, data. Offsets in bytes from the beginning of the file. */
export interface Element {
  readonly id: number;
  readonly start: number;
  readonly bodyStart: number;
  /** Cut at the end of what holds it; its end where the size is unknown. */
  readonly end: number;
  readonly isUnknownSize: boolean;
  /** How far it says it reaches beyond what holds it. */
  readonly missingBytes: number;
}

/** How a walk ended: all was seen, the visitor had enough, the limits were met, or no element could begin there. */
export type WalkEnd =
  | { readonly ended: 'all' | 'enough' | 'limit' }
  | { readonly ended: 'malformed'; readonly at: number };

/** Calls `visit` for each element of a stretch in order, until it answers 'enough'. */
export async function walkElements(
  bytes: BoundedBytes,
  range: { readonly start: number; readonly end: number },
  visit: (element: Element) => Promise<'enough' | undefined>,
): Promise<WalkEnd> {
  let at = range.start;
  while (at < range.end) {
    const head = await bytes.read(at, Math.min(12, range.end - at));
    if (head.length === 0) return { ended: 'limit' };
    const element = readElementHead(head, at, range.end);
    if (!element) return { ended: 'malformed', at };
    if ((await visit(element)) === 'enough') return { ended: 'enough' };
    at = element.end;
  }
  return { ended: 'all' };
}

function readElementHead(head: Uint8Array, start: number, end: number): Element | null {
  const id = readElementId(head, 0);
  if (!id || id.value === null) return null;
  const size = readElementSize(head, id.bytes);
  if (!size) return null;
  const bodyStart = start + id.bytes + size.bytes;
  const written = size.value === null ? end : bodyStart + size.value;
  return {
    id: id.value,
    start,
    bodyStart,
    end: Math.min(written, end),
    isUnknownSize: size.value === null,
    missingBytes: Math.max(0, written - end),
  };
}
