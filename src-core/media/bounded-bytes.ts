import type { ByteSource } from './byte-source.ts';

/**
 * How much of one file is ever read, whatever it claims about itself. Measured on files of ffmpeg 5.1: a clip of a
 * minute takes 3 reads and 86 kB, one of an hour 4 reads and 98 kB, ten minutes in fragments of a second 600 reads
 * and 2.5 MB.
 */
export const READING_LIMITS = {
  /** Bytes over all reads of one file. */
  totalBytes: 8 * 1024 * 1024,
  /** Reads asked of the source. */
  reads: 1500,
  /** Parts looked at, most of them answered from bytes already at hand. */
  steps: 20_000,
  /** Bytes in one read. */
  pieceBytes: 64 * 1024,
  /** Bytes in the first reads somewhere new: enough for the whole description of a short clip. */
  firstBytes: 16 * 1024,
  /** Reads somewhere new of that size: the head, and the movie box at the end. */
  firstReads: 2,
  /** Bytes in further reads somewhere new: fragments and clusters, of which only the heads count. */
  leapBytes: 4 * 1024,
} as const;

/** A file's bytes through a window that looks a little ahead, within {@link READING_LIMITS}. */
export interface BoundedBytes {
  /** Length of the file in bytes. */
  readonly size: number;
  /**
   * Bytes from `offset`: fewer than `length` at the end of the file, above one piece, or once a limit is spent. At
   * once where the window holds them, as it mostly does.
   */
  read(offset: number, length: number): Uint8Array | Promise<Uint8Array>;
  /** Brings `length` bytes (one piece at most) within reach of the window in a single read. */
  prefetch(offset: number, length: number): Promise<void>;
  /** True once a limit was met: from then on every read gives nothing. */
  isSpent(): boolean;
}

const NOTHING = new Uint8Array(0);

/** Puts {@link READING_LIMITS} and a read-ahead window of one piece in front of a source. */
export function boundBytes(source: ByteSource): BoundedBytes {
  let window: Uint8Array = NOTHING;
  let windowStart = 0;
  let ahead: number = READING_LIMITS.firstBytes;
  let leaps = 0;
  let bytesLeft: number = READING_LIMITS.totalBytes;
  let readsLeft: number = READING_LIMITS.reads;
  let stepsLeft: number = READING_LIMITS.steps;

  const isSpent = () => bytesLeft <= 0 || readsLeft <= 0 || stepsLeft <= 0;
  const holds = (offset: number, length: number) =>
    offset >= windowStart && offset + length <= windowStart + window.length;

  const findHeld = (offset: number, length: number) =>
    holds(offset, length) ? window.subarray(offset - windowStart, offset - windowStart + length) : NOTHING;

  const limitLength = (offset: number, length: number) =>
    offset < 0 ? 0 : Math.max(0, Math.min(length, source.size - offset, READING_LIMITS.pieceBytes));

  async function load(offset: number, length: number): Promise<void> {
    const wanted = Math.min(limitLength(offset, length), bytesLeft);
    if (isSpent() || wanted <= 0) return;
    readsLeft -= 1;
    bytesLeft -= wanted;
    window = await source.read(offset, wanted);
    windowStart = offset;
  }

  /** Reads more than is wanted: a little somewhere new, ever more where one read follows another. */
  async function loadAhead(offset: number, wanted: number): Promise<void> {
    const goesOn = window.length > 0 && offset >= windowStart && offset <= windowStart + window.length;
    if (goesOn) {
      ahead = Math.min(ahead * 2, READING_LIMITS.pieceBytes);
    } else {
      ahead = leaps < READING_LIMITS.firstReads ? READING_LIMITS.firstBytes : READING_LIMITS.leapBytes;
      leaps += 1;
    }
    await load(offset, Math.max(wanted, ahead));
  }

  return {
    size: source.size,
    isSpent,
    read(offset, length) {
      stepsLeft -= 1;
      const wanted = limitLength(offset, length);
      if (wanted === 0 || stepsLeft <= 0) return NOTHING;
      return holds(offset, wanted)
        ? findHeld(offset, wanted)
        : loadAhead(offset, wanted).then(() => findHeld(offset, wanted));
    },
    async prefetch(offset, length) {
      const wanted = limitLength(offset, length);
      if (wanted > 0 && !holds(offset, wanted)) await load(offset, wanted);
    },
  };
}
