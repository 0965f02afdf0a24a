import { type BoundedBytes, READING_LIMITS } from '../bounded-bytes.ts';

/**
 * How much of a still exifr gets to see: EXIF is one block of at most 64 kB near the beginning of a JPEG (EXIF 2.32
 * §4.5.4), and near the beginning of a PNG too (common practice).
 */
const HEAD_BYTES = 256 * 1024;

/** The first bytes of a still, {@link HEAD_BYTES} at most, in a buffer of their own. */
export async function readStillHead(bytes: BoundedBytes): Promise<Uint8Array> {
  const head = new Uint8Array(Math.min(HEAD_BYTES, bytes.size));
  for (let at = 0; at < head.length; at += READING_LIMITS.pieceBytes) {
    const length = Math.min(READING_LIMITS.pieceBytes, head.length - at);
    await bytes.prefetch(at, length);
    head.set(await bytes.read(at, length), at);
  }
  return head;
}
