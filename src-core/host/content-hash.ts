import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';

/** Bytes per sample. */
const SAMPLE_BYTES = 16_384;

/** How many samples are spread evenly over the file, its first and last bytes included. */
const SAMPLES = 5;

/**
 * A quick fingerprint of a file's content: SHA-256 over its size and five samples, as 32 hex digits. Equal files
 * have equal fingerprints; files with equal fingerprints are compared by {@link readFullHash}.
 */
export async function readSampleHash(filePath: string): Promise<string> {
  const handle = await open(filePath, 'r');
  try {
    const { size } = await handle.stat();
    const hash = createHash('sha256').update(`${size}\n`);
    const buffer = new Uint8Array(SAMPLE_BYTES);
    for (let sample = 0; sample < SAMPLES; sample += 1) {
      const at = Math.floor((Math.max(0, size - SAMPLE_BYTES) * sample) / (SAMPLES - 1));
      const { bytesRead } = await handle.read(buffer, 0, SAMPLE_BYTES, at);
      hash.update(buffer.subarray(0, bytesRead));
      if (size <= SAMPLE_BYTES) break;
    }
    return hash.digest('hex').slice(0, 32);
  } finally {
    await handle.close();
  }
}

/** SHA-256 of the whole file as 32 hex digits, streamed. Rejects where the file cannot be read. */
export async function readFullHash(filePath: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(filePath), hash);
  return hash.digest('hex').slice(0, 32);
}
