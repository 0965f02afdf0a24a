import type { Seconds } from '../platform/units.ts';

/** What ffmpeg says of a clip before it decodes anything. */
export interface ClipFacts {
  /** Null where it does not say, as for stills. */
  readonly durationSeconds: Seconds | null;
  /** Pictures a second; null where it does not say. */
  readonly rateHz: number | null;
  /** Width times height; null where it does not say. */
  readonly pixels: number | null;
  /** How far the stored pictures must be turned clockwise to stand upright. */
  readonly turnDegrees: 0 | 90 | 180 | 270;
}

/** Everything that one run of ffmpeg tells beside its output. */
export interface RunTalk {
  readonly facts: ClipFacts;
  /** Pictures that the decoder gave; 0 where the run does not show them. */
  readonly shown: number;
  /** How many steps from one to the next were wider than each of the widths that the listener watches for. */
  readonly gaps: readonly number[];
  /** Processor time of the ffmpeg process; 0 until it has ended by itself. */
  readonly cpuSeconds: Seconds;
}

/** Gathers what ffmpeg says; `hear` takes one line at a time. */
export interface RunListener {
  readonly hear: (line: string) => void;
  readonly tell: () => RunTalk;
}

const TURNS = [0, 90, 180, 270] as const;

/** A listener for one run. Only the first input's first video stream counts. */
export function createRunListener(watchedGapsSeconds: readonly Seconds[] = []): RunListener {
  let durationSeconds: Seconds | null = null;
  let rateHz: number | null = null;
  let pixels: number | null = null;
  let turnDegrees: ClipFacts['turnDegrees'] = 0;
  let cpuSeconds = 0;
  let videos = 0;
  let isGreeting = true;
  let shown = 0;
  const gaps = watchedGapsSeconds.map(() => 0);
  let lastShown = Number.POSITIVE_INFINITY;
  const hearGreeting = (line: string) => {
    durationSeconds ??= readDuration(line);
    if (/Stream #0:\d+.*: Video: /.test(line)) {
      videos += 1;
      if (videos === 1) {
        rateHz = readNumber(/, ([\d.]+)(k?) fps/, line);
        pixels = readPixels(line);
      }
    }
    const turn = videos === 1 ? readNumber(/displaymatrix: rotation of (-?[\d.]+) degrees/, line) : null;
    if (turn !== null) turnDegrees = TURNS[((Math.round(-turn / 90) % 4) + 4) % 4] ?? 0;
    if (/^\[info\] (Stream mapping|Output #0|Input #1)/.test(line)) isGreeting = false;
  };
  return {
    hear: (line) => {
      if (isGreeting) hearGreeting(line);
      const at = line.includes('showinfo') ? readNumber(/ pts_time:\s*(-?[\d.]+)/, line) : null;
      if (at !== null) {
        shown += 1;
        const step = at - lastShown;
        watchedGapsSeconds.forEach((width, index) => {
          if (step > width) gaps[index] = (gaps[index] ?? 0) + 1;
        });
        lastShown = at;
        return;
      }
      const bench = /bench: utime=([\d.]+)s stime=([\d.]+)s/.exec(line);
      if (bench) cpuSeconds = Number(bench[1]) + Number(bench[2]);
    },
    tell: () => ({ facts: { durationSeconds, rateHz, pixels, turnDegrees }, shown, gaps, cpuSeconds }),
  };
}

function readDuration(line: string): Seconds | null {
  const found = /^\[info\]\s+Duration: (\d+):(\d{2}):(\d{2}(?:\.\d+)?),/.exec(line);
  if (!found) return null;
  const [hours = 0, minutes = 0, seconds = 0] = found.slice(1).map(Number);
  return hours * 3600 + minutes * 60 + seconds;
}

function readPixels(line: string): number | null {
  const found = /, (\d{2,5})x(\d{2,5})[ ,]/.exec(line);
  return found ? Number(found[1]) * Number(found[2]) : null;
}

/** The pattern's number, times a thousand where a `k` follows it; null where it does not fit. */
function readNumber(pattern: RegExp, line: string): number | null {
  const found = pattern.exec(line);
  return found ? Number(found[1]) * (found[2] === 'k' ? 1000 : 1) : null;
}
