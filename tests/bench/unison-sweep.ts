import { listBeats } from '../../fixtures/film/timeline.ts';
import { createSmallFilm } from '../../fixtures/sweep/unison-luma.ts';
import type { UnisonScene, UnisonTruth } from '../../fixtures/sweep/unison-scenes.ts';
import { findReps } from '../../src-core/evidence/reps.ts';
import type { RepsFinding } from '../../src-core/evidence/reps-finding.ts';
import { measureUnison } from '../../src-core/evidence/unison.ts';
import type { UnisonFinding } from '../../src-core/evidence/unison-finding.ts';
import { createMotionReader } from '../../src-core/signal/motion-reader.ts';
import type { MotionSeries } from '../../src-core/signal/motion-series.ts';
import { measureAgreement, rescaleAgreement } from '../../src-core/signal/order-parameter.ts';

/** The lesson's usual tolerance, in seconds. */
export const TOLERANCE_SECONDS = 0.35;
/** Half the width of the band round the largest lag that counts in which either answer will do; less for fast exercises. */
const BAND = { seconds: 0.1, cycles: 1 / 14 } as const;
/** However long the tolerance, nobody further from the group than this share of a cycle is together with it. */
const TOGETHER_CYCLES = 1 / 6;

/** Where the reps come from, and whether the number of lanes is said or estimated. */
export interface SweepWay {
  readonly reps: 'true' | 'found';
  readonly lanes: 'given' | 'estimated';
}

/** What one scene gave. */
export interface SceneResult {
  readonly scene: UnisonScene;
  readonly found: UnisonFinding | null;
  /** Absolute lag errors of the lanes in seconds; empty unless there are as many as performers. */
  readonly lagErrors: readonly number[];
  /** Whether "together" was answered right; null where either answer will do. */
  readonly isTogetherRight: boolean | null;
}

/** Reads the motion of a scene, drawn in memory. */
export function readSceneMotion(scene: UnisonScene): MotionSeries {
  const film = createSmallFilm(scene.script);
  const reader = createMotionReader(film);
  for (let frame = 0; frame < film.frameCount; frame++) reader.push(film.drawLuma(frame));
  return reader.finish();
}

/** Measures one scene against its truth. */
export function measureScene(scene: UnisonScene, motion: MotionSeries, way: SweepWay): SceneResult {
  const reps = way.reps === 'true' ? tellReps(scene) : findReps(motion, { counting: 'cycle' });
  const lanes = way.lanes === 'given' ? scene.truth.lanes.length : null;
  const found = measureUnison(motion, reps, { lanes, toleranceSeconds: TOLERANCE_SECONDS });
  return {
    scene,
    found,
    lagErrors: found === null ? [] : compareLags(found, scene.truth),
    isTogetherRight: judgeTogether(scene, found),
  };
}

/** The finding of somebody who knows the beats. */
function tellReps({ script }: UnisonScene): RepsFinding {
  const beats = script.movement === null ? [] : listBeats(script.movement);
  const isMoving = beats.length > 1;
  return {
    count: isMoving ? beats.length - 1 : null,
    confidence: 1,
    timesSeconds: beats.slice(1),
    repConfidences: beats.slice(1).map(() => 1),
    cycleSeconds: script.movement?.cycleSeconds ?? null,
    spanSeconds: isMoving ? [beats[0] ?? 0, beats.at(-1) ?? 0] : null,
    runs: isMoving ? [{ boundariesSeconds: beats, confidences: beats.slice(1).map(() => 1) }] : [],
    trace: {
      rateHz: script.rateHz,
      cycleSecondsAt: new Float32Array(0),
      strength: new Float32Array(0),
      signal: new Float32Array(0),
    },
  };
}

function findMean(offsets: readonly number[], cycleSeconds: number): { length: number; offset: number } {
  const turn = (2 * Math.PI) / cycleSeconds;
  const along = offsets.reduce((sum, offset) => sum + Math.cos(offset * turn), 0) / offsets.length;
  const across = offsets.reduce((sum, offset) => sum + Math.sin(offset * turn), 0) / offsets.length;
  return { length: Math.hypot(along, across), offset: Math.atan2(across, along) / turn };
}

/**
 * Lane by lane from left to right. Where the truth has no common beat (order parameter below 0.5) the group's mean is
 * anywhere, so lags are compared with each other instead of with the mean.
 */
function compareLags(found: UnisonFinding, { lanes, cycleSeconds }: UnisonTruth): number[] {
  if (found.lanes.length !== lanes.length) return [];
  const wrap = (lag: number) => lag - cycleSeconds * Math.round(lag / cycleSeconds);
  const differences = found.lanes.map((lane, index) =>
    wrap(lane.lagSeconds - (lanes[index]?.lagSeconds ?? 0)),
  );
  const truth = findMean(
    lanes.map(({ lagSeconds }) => lagSeconds),
    cycleSeconds,
  );
  const shift = truth.length < 0.5 ? findMean(differences, cycleSeconds).offset : 0;
  return differences.map((difference) => Math.abs(wrap(difference - shift)));
}

/** The largest lag of a scene, as it was written. */
function findWorstLag({ lanes }: UnisonTruth): number {
  return Math.max(0, ...lanes.map(({ lagSeconds }) => Math.abs(lagSeconds)));
}

/** No answer at all counts as wrong for a group that moves; one performer, or nobody moving, must give none. */
function judgeTogether(scene: UnisonScene, found: UnisonFinding | null): boolean | null {
  const { truth, family } = scene;
  if (family === 'alone' || family === 'idle') return found === null;
  const missed = Math.max(...truth.lanes.map(({ cycles }) => truth.cycles - cycles));
  const worst = findWorstLag(truth);
  const reach = Math.min(TOLERANCE_SECONDS, TOGETHER_CYCLES * truth.cycleSeconds);
  const band = Math.min(BAND.seconds, BAND.cycles * truth.cycleSeconds);
  if (missed <= 1 && Math.abs(worst - reach) < band) return null;
  return found?.together === (missed <= 1 && worst <= reach);
}

/** Figures over many scenes. */
export interface SweepFigures {
  readonly scenes: number;
  /** Share of groups with as many lanes as performers. */
  readonly lanesRight: number;
  readonly lagMedian: number;
  readonly lagMost: number;
  readonly togetherRight: number;
  /** Scores of four (of three planks) at random places of the cycle. */
  readonly chanceMean: number;
  readonly chanceMedian: number;
  /**
   * The same rescaled after averaging over the groups, as the chance value is defined: a group's own score stops at 0, so
   * that the mean of scores lies above it. From the lanes' lags, and from those that were written.
   */
  readonly chanceAfterwards: number;
  readonly chanceWritten: number;
  /** Share of lanes whose reps were counted exactly. */
  readonly repsExact: number;
  /** Shares called alternating: of those who do, and of all others but the random ones. */
  readonly alternatingSeen: number;
  readonly alternatingFalse: number;
}

/** How far a group's lags agree beyond chance; below 0 where they agree less. */
function findExcess(lags: readonly { readonly lagSeconds: number }[], cycleSeconds: number): number {
  const { length } = measureAgreement(
    lags.map(({ lagSeconds }) => (2 * Math.PI * lagSeconds) / cycleSeconds),
  );
  return rescaleAgreement(length, lags.length);
}

function averageChance(
  results: readonly SceneResult[],
): Pick<SweepFigures, 'chanceAfterwards' | 'chanceWritten'> {
  const excesses = results.flatMap(({ scene: { family, truth }, found }) =>
    family === 'chance' && found
      ? [
          {
            found: findExcess(found.lanes, truth.cycleSeconds),
            written: findExcess(truth.lanes, truth.cycleSeconds),
          },
        ]
      : [],
  );
  const average = (key: 'found' | 'written') =>
    excesses.reduce((sum, excess) => sum + excess[key], 0) / Math.max(1, excesses.length);
  return { chanceAfterwards: average('found'), chanceWritten: average('written') };
}

/** Sums results up; lags at the median and at 95 %, in seconds. */
export function summariseSweep(results: readonly SceneResult[]): SweepFigures {
  const groups = results.filter(({ scene }) => scene.family !== 'alone' && scene.family !== 'idle');
  const lags = groups.flatMap(({ lagErrors }) => lagErrors).sort((one, other) => one - other);
  const at = (sorted: readonly number[], share: number) =>
    sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  const rightLanes = groups.filter(({ scene, found }) => found?.lanes.length === scene.truth.lanes.length);
  const chance = results
    .flatMap(({ scene, found }) => (scene.family === 'chance' && found ? [found.score] : []))
    .sort((one, other) => one - other);
  const repErrors = rightLanes.flatMap(({ scene, found }) =>
    (found?.lanes ?? []).map((lane, index) => lane.reps - (scene.truth.lanes[index]?.cycles ?? 0)),
  );
  const share = (values: readonly boolean[]) => values.filter(Boolean).length / Math.max(1, values.length);
  const isByTurns = ({ scene }: SceneResult) =>
    scene.family === 'alternating' || scene.family === 'staggered';
  const alternating = (some: readonly SceneResult[]) =>
    share(some.map(({ found }) => found?.alternating === true));
  return {
    scenes: results.length,
    lanesRight: rightLanes.length / Math.max(1, groups.length),
    lagMedian: at(lags, 0.5),
    lagMost: at(lags, 0.95),
    togetherRight: share(
      results.flatMap(({ isTogetherRight: isRight }) => (isRight === null ? [] : [isRight])),
    ),
    chanceMean: chance.reduce((sum, score) => sum + score, 0) / Math.max(1, chance.length),
    chanceMedian: at(chance, 0.5),
    ...averageChance(results),
    repsExact: share(repErrors.map((error) => error === 0)),
    alternatingSeen: alternating(groups.filter(isByTurns)),
    alternatingFalse: alternating(
      groups.filter((result) => !isByTurns(result) && result.scene.family !== 'chance'),
    ),
  };
}
