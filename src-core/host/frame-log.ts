import type { LumaFrame } from '../evidence/luma-frame.ts';
import type { Seconds } from '../platform/units.ts';

/** Larger pictures than these are never asked for; a size beyond is a misread line. */
const MAX_SIDE = 8192;

/**
 * What ffmpeg's filter `showinfo` tells of each picture, in order, and what its greeting tells of the clip. The
 * pictures come empty, to be filled from the raw stream.
 */
export class FrameLog {
  /** Length of the clip; null until it is told, and where it is not. */
  durationSeconds: Seconds | null = null;
  #tickSeconds = 0;
  #closed = false;
  readonly #told: LumaFrame[] = [];
  #waiting: ((frame: LumaFrame | null) => void) | null = null;

  /** Takes in one line of ffmpeg's talk; lines about anything else pass by. */
  hear(line: string): void {
    const duration = /^(?:\[info\])?\s+Duration: (\d+):(\d{2}):(\d{2}(?:\.\d+)?),/.exec(line);
    if (duration) {
      const [, hours, minutes, seconds] = duration.map(Number);
      this.durationSeconds = (hours ?? 0) * 3600 + (minutes ?? 0) * 60 + (seconds ?? 0);
    }
    if (!line.includes('showinfo')) return;
    const base = /config in time_base: (\d+)\/(\d+)/.exec(line);
    if (base) this.#tickSeconds = Number(base[1]) / Number(base[2]);
    const told = / pts:\s*(-?\d+) .*\bs:(\d+)x(\d+)/.exec(line);
    if (told) this.#tell(Number(told[1]), Number(told[2]), Number(told[3]));
  }

  /** The next picture's frame, when it is told; null when no more will come. */
  next(): Promise<LumaFrame | null> {
    const first = this.#told.shift();
    if (first || this.#closed) return Promise.resolve(first ?? null);
    return new Promise((resolve) => {
      this.#waiting = resolve;
    });
  }

  /** No more lines will come. */
  close(): void {
    this.#closed = true;
    this.#waiting?.(null);
    this.#waiting = null;
  }

  #tell(ticks: number, width: number, height: number): void {
    if (width > MAX_SIDE || height > MAX_SIDE) return;
    // Whole microseconds, so that the same picture has the same time whatever the stream's own ticks are.
    const atSeconds = Math.round(ticks * this.#tickSeconds * 1e6) / 1e6;
    const frame = { width, height, atSeconds, luma: new Uint8Array(width * height) };
    if (!this.#waiting) {
      this.#told.push(frame);
      return;
    }
    this.#waiting(frame);
    this.#waiting = null;
  }
}
