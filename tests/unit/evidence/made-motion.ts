import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import type { MotionSeries } from '../../../src-core/signal/motion-series.ts';

/** A performer made of cells alone: a group of columns that moves as one. */
export interface MadePerformer {
  /** First column and number of columns. */
  readonly columns: readonly [from: number, count: number];
  /** The same from above; 3 and 6 unless set. */
  readonly rows?: readonly [from: number, count: number];
  readonly lagSeconds?: number;
  /** Own cycle length where it differs from the group's. */
  readonly cycleSeconds?: number;
  readonly missed?: readonly number[];
  /** Parts to the right and down of the movement; straight up and down unless set. */
  readonly direction?: readonly [number, number];
}

/** What a made clip holds beside its performers. */
export interface MadeClip {
  readonly cycleSeconds: number;
  readonly cycles: number;
  readonly startsAtSeconds?: number;
  /** Share by which cycles grow longer from first to last. */
  readonly drift?: number;
  readonly noise?: number;
  /** Someone who walks through the whole picture from left to right, from this instant on, in 3 s. */
  readonly walkInAtSeconds?: number;
}

/** Where the cycles of a clip begin and the last one ends. */
export function listBoundaries(clip: MadeClip): number[] {
  let at = clip.startsAtSeconds ?? 2;
  return Array.from({ length: clip.cycles + 1 }, (_, cycle) => {
    const from = at;
    at += clip.cycleSeconds * (1 + (clip.drift ?? 0) * (cycle / Math.max(1, clip.cycles - 1) - 0.5));
    return from;
  });
}

/** Cycles gone by at an instant, fractions allowed. */
function findPosition(boundaries: readonly number[], at: number): number {
  const next = boundaries.findIndex((boundary) => boundary > at);
  if (next <= 0) return next === 0 ? -1 : boundaries.length;
  const from = boundaries[next - 1] ?? 0;
  return next - 1 + (at - from) / ((boundaries[next] ?? 0) - from);
}

const COLUMNS = 20;
const ROWS = 11;
const RATE_HZ = 15;

/** Flow of performers who go down and up once a cycle, each after the other's lag; deterministic. */
export function makeMotion(performers: readonly MadePerformer[], clip: MadeClip): MotionSeries {
  const start = clip.startsAtSeconds ?? 2;
  const frameCount = Math.ceil((start + clip.cycles * clip.cycleSeconds + 3) * RATE_HZ);
  const boundaries = listBoundaries(clip);
  const cells = COLUMNS * ROWS;
  const random = seededRandom(5);
  const noise = clip.noise ?? 0.05;
  const draw = () => noise * (random() + random() + random() - 1.5) * 2;
  const u = Float32Array.from({ length: frameCount * cells }, (_, at) => (at < cells ? 0 : draw()));
  const v = Float32Array.from({ length: frameCount * cells }, (_, at) => (at < cells ? 0 : draw()));
  for (let frame = 1; frame < frameCount; frame++) {
    // Flow of a frame is what moved since the frame before.
    const at = (frame - 0.5) / RATE_HZ;
    for (const performer of performers) {
      const late = at - (performer.lagSeconds ?? 0);
      const own =
        performer.cycleSeconds === undefined
          ? findPosition(boundaries, late)
          : (late - start) / performer.cycleSeconds;
      const isOn = own >= 0 && own < clip.cycles && !performer.missed?.includes(Math.floor(own));
      if (!isOn) continue;
      const speed = Math.sin(2 * Math.PI * own) + 0.4 * Math.sin(4 * Math.PI * own);
      const [right, down] = performer.direction ?? [0, 1];
      const [from, count] = performer.columns;
      const [above, high] = performer.rows ?? [3, 6];
      for (let cell = 0; cell < cells; cell++) {
        const column = cell % COLUMNS;
        const row = Math.floor(cell / COLUMNS);
        if (column < from || column >= from + count) continue;
        if (row < above || row >= above + high) continue;
        u[frame * cells + cell] = (u[frame * cells + cell] ?? 0) + speed * right;
        v[frame * cells + cell] = (v[frame * cells + cell] ?? 0) + speed * down;
      }
    }
    const walked = (at - (clip.walkInAtSeconds ?? Number.POSITIVE_INFINITY)) / 3;
    if (walked < 0 || walked > 1) continue;
    for (let row = 2; row < ROWS; row++) {
      for (let column = 0; column < COLUMNS; column++) {
        if (Math.abs(column - walked * COLUMNS) > 1) continue;
        u[frame * cells + row * COLUMNS + column] = 1.8;
      }
    }
  }
  return {
    rateHz: RATE_HZ,
    fromSeconds: 0,
    width: 80,
    height: 45,
    columns: COLUMNS,
    rows: ROWS,
    frameCount,
    u,
    v,
    fine: { columns: COLUMNS, rows: ROWS, u, v },
    camera: new Float32Array(frameCount * 4),
  };
}
