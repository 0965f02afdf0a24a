import { createHash } from 'node:crypto';
import { Transform } from 'node:stream';

/** What went through a tap. */
export interface TappedBytes {
  readonly bytes: number;
  /** 64 hex digits. */
  readonly sha256: string;
}

/** A stream that passes bytes on as they are, and what went through it by the time it has ended. */
export function openHashTap(onBytes: (bytes: number) => void): {
  readonly tap: Transform;
  readonly finish: () => TappedBytes;
} {
  const hash = createHash('sha256');
  let bytes = 0;
  const tap = new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      bytes += chunk.length;
      onBytes(chunk.length);
      done(null, chunk);
    },
  });
  return { tap, finish: () => ({ bytes, sha256: hash.digest('hex') }) };
}
