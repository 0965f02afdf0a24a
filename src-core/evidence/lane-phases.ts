import { alignLanes } from '../signal/align-lanes.ts';
import { STEPS_PER_CYCLE } from '../signal/cycle-samples.ts';
import type { LaneFlow } from '../signal/lane-signal.ts';
import { measureAgreement } from '../signal/order-parameter.ts';
import { wrapPhase } from '../signal/phase.ts';
import { measurePhaseLocking } from '../signal/phase-locking.ts';

/** Where a lane stands in the group's cycle, and how that changes from one cycle to the next. Radians; behind is negative. */
export interface LanePhase {
  /** Over the whole clip, against the group; -π to π. */
  readonly phase: number;
  /** In each cycle of the clip, read with its neighbours, run after run, against the group; the group's own wavering is taken out. */
  readonly cyclePhases: readonly number[];
  /** How much of the group's cycle the lane holds in each, 0 or more; one scale within a lane, not across lanes. */
  readonly amplitudes: readonly number[];
  /** How steadily the lane keeps its place in the cycle, 0 (anywhere) to 1; its phase-locking value with the group. */
  readonly steadiness: number;
}

/** Rounds in which the group's wavering and the lanes' places are estimated from each other. */
const ROUNDS = 4;

/**
 * Phases of all lanes, from their flow in each run: by how much each cycle of a lane has to be moved to fit the group's.
 * The group's phase is the mean direction of the lanes' (ψ of the order parameter); a lane's is what it differs by.
 */
export function measurePhases(lanes: readonly (readonly LaneFlow[])[]): LanePhase[] {
  const read = alignLanes(lanes).map((runs): CyclePhases => {
    const lags = runs.flat();
    return {
      phases: lags.map(({ steps }) => (-2 * Math.PI * steps) / STEPS_PER_CYCLE),
      amplitudes: lags.map(({ match }) => Math.max(0, match)),
    };
  });
  const { places, wavering } = separate(read);
  const middle = measureAgreement(places).phase;
  return read.map(({ phases, amplitudes }, lane) => {
    const own = phases.map((phase, cycle) => phase - (wavering[cycle] ?? 0));
    return {
      phase: wrapPhase((places[lane] ?? 0) - middle),
      cyclePhases: own.map((phase) => wrapPhase(phase - middle)),
      amplitudes,
      steadiness: measurePhaseLocking(phases, wavering, amplitudes),
    };
  });
}

interface CyclePhases {
  readonly phases: readonly number[];
  readonly amplitudes: readonly number[];
}

/** Splits phases into a place for each lane and a wavering for each cycle that all lanes share. */
function separate(lanes: readonly CyclePhases[]): { places: number[]; wavering: number[] } {
  const cycles = lanes[0]?.phases.length ?? 0;
  // Amplitude against the lane's own mean: whoever stands still in a cycle has no say in it.
  const weights = lanes.map(({ amplitudes }) => {
    const mean = amplitudes.reduce((sum, value) => sum + value, 0) / Math.max(1, cycles);
    return amplitudes.map((value) => (mean === 0 ? 0 : Math.min(1, value / mean)));
  });
  let wavering = Array.from({ length: cycles }, () => 0);
  let places: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    places = lanes.map(
      ({ phases }, lane) =>
        measureAgreement(
          phases.map((phase, cycle) => phase - (wavering[cycle] ?? 0)),
          weights[lane],
        ).phase,
    );
    wavering = wavering.map(
      (_, cycle) =>
        measureAgreement(
          lanes.map(({ phases }, lane) => (phases[cycle] ?? 0) - (places[lane] ?? 0)),
          weights.map((lane) => lane[cycle] ?? 0),
        ).phase,
    );
  }
  return { places, wavering };
}
