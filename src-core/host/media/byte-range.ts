/** Which bytes of a file a request is to be given. */
export type ByteRange =
  /** First and last byte, both included. */
  | { readonly kind: 'part'; readonly from: number; readonly to: number }
  /** No range was asked, or one that may be passed over. */
  | { readonly kind: 'whole' }
  /** It lies outside the file. */
  | { readonly kind: 'outside' };

/**
 * Reads a Range header (RFC 9110, 14.2) for a file of `size` bytes. One range of bytes is served; several at once,
 * and other units, are passed over as the RFC allows. A part is at most `longest` bytes: an answer may be shorter
 * than was asked, and a browser then asks for the rest.
 */
export function readByteRange(header: string | null, size: number, longest: number): ByteRange {
  const [, first, last] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header?.trim() ?? '') ?? [];
  if (first === undefined || last === undefined || (first === '' && last === '')) return { kind: 'whole' };
  if (first === '')
    return cut(Math.max(0, size - Number(last)), size - 1, { size, longest, isEmpty: Number(last) === 0 });
  const from = Number(first);
  const to = last === '' ? size - 1 : Math.min(Number(last), size - 1);
  if (last !== '' && Number(last) < from) return { kind: 'whole' };
  return cut(from, to, { size, longest, isEmpty: false });
}

function cut(
  from: number,
  to: number,
  { size, longest, isEmpty }: { readonly size: number; readonly longest: number; readonly isEmpty: boolean },
): ByteRange {
  if (isEmpty || from >= size) return { kind: 'outside' };
  return { kind: 'part', from, to: Math.min(to, from + longest - 1) };
}
