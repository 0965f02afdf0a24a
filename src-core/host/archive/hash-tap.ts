import { createHash } from 'node:crypto';
import { Transform } from 'node:stream';

/** What went through a tap. */
export interface TappedBytes {
  readonly bytes: number;
  /** 64 hex digits. */
  readonly sha256: string;
}

/**
 * A stream that passes bytes on as they are. `onEnd` hears what went through it once all has, and before whoever reads
 * from it hears that it has ended; never where it was cut off.
 */
export function openHashTap(
  onBytes: (bytes: number) => void,
  onEnd: (tapped: TappedBytes) => void,
): Transform {
  const hash = createHash('sha256');
  let bytes = 0;
  return new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      bytes += chunk.length;
      onBytes(chunk.length);
      done(null, chunk);
    },
    flush(done) {
      onEnd({ bytes, sha256: hash.digest('hex') });
      done();
    },
  });
}
