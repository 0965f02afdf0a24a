import type { ClipLook } from '../evidence/clip-look.ts';
import type { ClipMovement, MovementOptions } from '../evidence/clip-movement.ts';
import type { MotionPrint } from '../evidence/motion-print.ts';
import type { GivenLanes, UnisonFinding } from '../evidence/unison-finding.ts';
import type { Plan, StationCode } from '../lesson/plan.ts';

/** A clip's movement as read under one set of options. */
export interface KnownMovement {
  readonly options: MovementOptions;
  /** Null: asked for, and the clip was not watched. */
  readonly movement: ClipMovement | null;
}

/** All that a clip's pictures have given so far, beside its card. Any part may be missing; nothing waits for it. */
export interface ClipEvidence {
  /** Null: not looked at. */
  readonly look: ClipLook | null;
  /** Null: not watched whole. */
  readonly print: MotionPrint | null;
  readonly movements: readonly KnownMovement[];
}

/** A clip nobody has looked at. */
export const NO_EVIDENCE: ClipEvidence = { look: null, print: null, movements: [] };

/**
 * How a movement is read at a station: by its counting rule and its tempo; with neither in mind where null.
 *
 * @param lanes the teacher's word on the performers, which unison alone heeds
 */
export function getMovementOptions(
  plan: Plan,
  code: StationCode | null,
  lanes: GivenLanes | null = null,
): MovementOptions {
  const station = plan.stations.find((one) => one.code === code);
  return {
    reps: { counting: station?.counting ?? 'cycle', cycleSeconds: station?.cycleSeconds ?? null },
    unison: { ...(lanes !== null && { lanes }), toleranceSeconds: plan.tolerances.togetherSeconds },
  };
}

/**
 * The movement that is shown: read by the rule of the station whose slot the clip has, with neither rule nor tempo in
 * mind where it has none. Null: not watched, not read yet, or nothing could be decoded.
 */
export function findShownMovement(
  evidence: ClipEvidence,
  plan: Plan,
  station: StationCode | null,
): ClipMovement | null {
  return findMovement(evidence, getMovementOptions(plan, station)) ?? null;
}

/** Where a clip's unison is measured: at a station or none, with the teacher's word on the performers or without. */
export interface UnisonPlace {
  readonly station: StationCode | null;
  readonly lanes: GivenLanes | null;
}

/**
 * The unison that is shown and proposed by. Undefined: the clip was watched, and it is not measured yet. Null: not
 * watched, nothing periodic, or fewer than two lanes.
 */
export function findShownUnison(
  evidence: ClipEvidence,
  plan: Plan,
  { station, lanes }: UnisonPlace,
): UnisonFinding | null | undefined {
  const movement = findMovement(evidence, getMovementOptions(plan, station, lanes));
  return movement === undefined && evidence.print ? undefined : (movement?.unison ?? null);
}

/** The movement read under these options; undefined: not asked for yet, null: the clip was not watched. */
export function findMovement(
  { movements }: ClipEvidence,
  options: MovementOptions,
): ClipMovement | null | undefined {
  const key = JSON.stringify(options);
  return movements.find((known) => JSON.stringify(known.options) === key)?.movement;
}
