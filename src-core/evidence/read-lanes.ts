import type { SampledRun } from '../signal/cycle-samples.ts';
import { findHomes, getApart, type Homes } from '../signal/find-homes.ts';
import { type HomeMap, readHomeMap, sumColumns } from '../signal/home-map.ts';
import { type LaneFlow, measureReturning, scaleLane, sumLane, weighCells } from '../signal/lane-signal.ts';
import { splitLanes, splitLanesAt } from '../signal/lanes.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import { wrapPhase } from '../signal/phase.ts';
import { measurePhases } from './lane-phases.ts';
import type { GivenLanes } from './unison-finding.ts';

/** Homes one above the other that keep together within this share of the cycle are one body. Set like `HOME_RULE`. */
const ONE_BODY_CYCLES = 0.1;

/** A lane with its motion read. */
export interface ReadLane {
  /** Pixel column of its middle in the small frame. */
  readonly middle: number;
  /** What belongs to it; see {@link weighCells}. */
  readonly weights: Float64Array;
  /** Its flow, one a run, scaled so that no lane outweighs another. */
  readonly flows: readonly LaneFlow[];
}

/** Whether a pixel of the home map is a lane's own. */
type IsOwn = (pixel: number) => boolean;

/** What lanes are read from. */
interface Source {
  readonly map: HomeMap;
  readonly runs: readonly SampledRun[];
  readonly cells: number;
}

/**
 * The performers of a clip with what each one does, from left to right. Each has a home on the map, so that two rows are
 * told apart; where the teacher says another number, or where they are, the picture is cut in columns. To say the number
 * that was found changes nothing.
 */
export function readLanes(
  motion: MotionSeries,
  runs: readonly SampledRun[],
  given: GivenLanes | null,
): ReadLane[] {
  if (runs.length === 0) return [];
  const map = readHomeMap(runs, motion);
  const from = { map, runs, cells: motion.columns * motion.rows };
  if (given === null || typeof given === 'number') {
    const bodies = joinBodies(readHomes(findHomes(map), from), from);
    if (given === null || given === bodies.length) {
      return bodies.toSorted((one, other) => one.middle - other.middle);
    }
  }
  const profile = sumColumns(map);
  const lanes =
    typeof given === 'number'
      ? splitLanes(profile, given)
      : splitLanesAt(
          profile,
          given.map((x) => x * map.width),
        );
  return lanes.flatMap(({ from: left, to, middle }) =>
    readLane((pixel) => pixel % map.width >= left && pixel % map.width < to, from, middle),
  );
}

interface Body extends ReadLane {
  readonly isOwn: IsOwn;
  /** Pixel column of its highest point. */
  readonly column: number;
}

function readHomes({ peaks, owners }: Homes, from: Source): Body[] {
  return peaks.flatMap((peak, home) =>
    readBody((pixel) => owners[pixel] === home, from, peak % from.map.width),
  );
}

function readBody(isOwn: IsOwn, from: Source, column: number): Body[] {
  return readLane(isOwn, from, findMiddle(isOwn, from.map)).map((lane) => ({ ...lane, isOwn, column }));
}

/** One lane, or none where nothing returns. */
function readLane(isOwn: IsOwn, { map, runs, cells }: Source, middle: number): ReadLane[] {
  const weights = weighCells(isOwn, map, cells);
  const flows = runs.map((run) => sumLane(run, weights));
  const scale = Math.sqrt(measureReturning(flows));
  if (scale === 0) return [];
  return [{ middle, weights, flows: flows.map((flow) => scaleLane(flow, 1 / scale)) }];
}

/** Mean column of what is at home there, in pixels. */
function findMiddle(isOwn: IsOwn, { width, amounts }: HomeMap): number {
  let sum = 0;
  let total = 0;
  for (const [pixel, amount] of amounts.entries()) {
    if (!isOwn(pixel)) continue;
    sum += amount * ((pixel % width) + 0.5);
    total += amount;
  }
  return total === 0 ? 0 : sum / total;
}

/** Makes one lane of homes that lie one above the other and keep one beat, those nearest in time first. */
function joinBodies(bodies: readonly Body[], from: Source): readonly ReadLane[] {
  const phases = measurePhases(bodies.map(({ flows }) => flows));
  const turn = (one: number, other: number) =>
    Math.abs(wrapPhase((phases[one]?.phase ?? 0) - (phases[other]?.phase ?? 0))) / (2 * Math.PI);
  const [nearest] = bodies
    .flatMap((less, at) =>
      bodies.slice(0, at).map((more, before) => ({ more, less, cycles: turn(before, at) })),
    )
    .filter(({ more, less }) => Math.abs(more.column - less.column) < getApart(from.map))
    .filter(({ cycles }) => cycles < ONE_BODY_CYCLES)
    .sort((one, other) => one.cycles - other.cycles);
  if (nearest === undefined) return bodies;
  const { more, less } = nearest;
  const isOwn = (pixel: number) => more.isOwn(pixel) || less.isOwn(pixel);
  return joinBodies(
    bodies.flatMap((body) => {
      if (body === more) return readBody(isOwn, from, more.column);
      return body === less ? [] : [body];
    }),
    from,
  );
}
