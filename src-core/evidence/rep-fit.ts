import type { Station, StationCode } from '../lesson/plan.ts';
import type { RepsFinding } from './reps-finding.ts';

/**
 * What tempo and count are worth for or against a station, as odds: far less than a look-alike, for stations share
 * tempos and counts. Judgement, not measured.
 */
const ODDS = { tempo: { fits: 1.5, differs: 0.5 }, count: { fits: 1.4, differs: 0.8 } } as const;

/** A count is right within one far more often than to the rep. */
const COUNT_REACH = 1;

/**
 * How well the repeats of a clip, counted without a tempo in mind, fit each station: 0 (against) to 1 (for). Empty
 * where no reps were found; a station without a usual tempo is weighed by its count alone.
 */
export function scoreRepFit(
  { count, cycleSeconds }: Pick<RepsFinding, 'count' | 'cycleSeconds'>,
  stations: readonly Pick<Station, 'code' | 'reps' | 'counting' | 'cycleSeconds'>[],
): Readonly<Record<StationCode, number>> {
  if (count === null || cycleSeconds === null) return {};
  const scores = stations.map((station): [StationCode, number] => {
    const counted = station.counting === 'side' ? count * 2 : count;
    const near = Math.abs(counted - station.reps) <= COUNT_REACH;
    const [shortest, longest] = station.cycleSeconds ?? [0, Number.POSITIVE_INFINITY];
    const inTempo = cycleSeconds >= shortest && cycleSeconds <= longest;
    const tempo = station.cycleSeconds ? ODDS.tempo[inTempo ? 'fits' : 'differs'] : 1;
    const odds = tempo * ODDS.count[near ? 'fits' : 'differs'];
    return [station.code, odds / (1 + odds)];
  });
  return Object.fromEntries(scores);
}
