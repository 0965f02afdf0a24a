import type { Seconds } from '../platform/units.ts';
import type { MotionSeries } from './motion-series.ts';

/** In steps: files tell times in whole milliseconds, which is 0.0075 of a step at fifteen a second. */
const ROUNDING = 0.02;

/**
 * The same motion in even steps, from frames that lie unevenly in time: each even step gets its share of the flow of
 * every step it overlaps, so that no movement is lost or counted twice. Frames that come in even steps stay as they are.
 *
 * @param timesSeconds when each frame of `motion` was shown, ascending; as many as it has frames
 */
export function resampleMotion(
  motion: MotionSeries,
  timesSeconds: readonly Seconds[],
  rateHz: number,
): MotionSeries {
  const from = timesSeconds[0] ?? 0;
  const isEven = timesSeconds.every((at, frame) => Math.abs((at - from) * rateHz - frame) <= ROUNDING);
  if (isEven) return { ...motion, rateHz };
  const to = timesSeconds.at(-1) ?? from;
  // A frame that lies a rounding error before its even moment still counts for it.
  const frameCount = motion.frameCount === 0 ? 0 : Math.floor((to - from) * rateHz + 0.01) + 1;
  const shares = listShares(timesSeconds, { from, rateHz, frameCount });
  const { fine } = motion;
  const [cells, fineCells] = [motion.columns * motion.rows, fine.columns * fine.rows];
  return {
    ...motion,
    rateHz,
    frameCount,
    u: spread(motion.u, cells, { shares, frameCount }),
    v: spread(motion.v, cells, { shares, frameCount }),
    fine: {
      ...fine,
      u: spread(fine.u, fineCells, { shares, frameCount }),
      v: spread(fine.v, fineCells, { shares, frameCount }),
    },
    camera: spread(motion.camera, 4, { shares, frameCount }),
  };
}

/** How much of an uneven step falls into an even one. */
interface Share {
  /** Frame that the uneven step leads to. */
  readonly source: number;
  /** Frame that the even step leads to. */
  readonly target: number;
  /** Of the uneven step, 0 to 1. */
  readonly part: number;
}

interface EvenFrames {
  readonly from: Seconds;
  readonly rateHz: number;
  readonly frameCount: number;
}

function listShares(timesSeconds: readonly Seconds[], { from, rateHz, frameCount }: EvenFrames): Share[] {
  const shares: Share[] = [];
  for (let source = 1; source < timesSeconds.length; source++) {
    const begin = ((timesSeconds[source - 1] ?? 0) - from) * rateHz;
    const end = ((timesSeconds[source] ?? 0) - from) * rateHz;
    for (let target = Math.floor(begin) + 1; target < Math.min(frameCount, Math.ceil(end) + 1); target++) {
      const overlap = Math.min(end, target) - Math.max(begin, target - 1);
      if (overlap > 0) shares.push({ source, target, part: overlap / (end - begin) });
    }
  }
  return shares;
}

interface Spreading {
  readonly shares: readonly Share[];
  readonly frameCount: number;
}

function spread(values: Float32Array, perFrame: number, { shares, frameCount }: Spreading): Float32Array {
  const even = new Float32Array(frameCount * perFrame);
  for (const { source, target, part } of shares) {
    for (let at = 0; at < perFrame; at++) {
      const to = target * perFrame + at;
      even[to] = (even[to] ?? 0) + (values[source * perFrame + at] ?? 0) * part;
    }
  }
  return even;
}
