import { useCallback, useMemo } from 'react';
import type { EvidenceView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { GivenLanes } from '../../../src-core/evidence/unison-finding.ts';
import { countGivenLanes, MOST_LANES } from '../../../src-core/marking/given-lanes.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import type { Performers } from './performers-line.tsx';

/** The performers of the clip on the desk, with the keys that add and take one; null where nothing is counted. */
export function usePerformers(
  { id, word }: ClipView,
  evidence: EvidenceView | null,
  decide: (act: JournalAct) => unknown,
): Performers | null {
  const isCounted = (evidence?.reps?.count ?? 0) > 0;
  const given = word.lanes;
  const unison = evidence?.unison ?? null;
  const estimated = unison && !unison.areLanesGiven ? unison.lanes.length : null;
  const onSet = useCallback(
    (lanes: GivenLanes | null) => {
      decide({ kind: 'lanes-set', clip: id, lanes: typeof lanes === 'number' ? lanes : lanes && [...lanes] });
    },
    [decide, id],
  );
  const shift = (by: 1 | -1) => {
    if (!isCounted) return false;
    const now = given === null ? (estimated ?? 1) : countGivenLanes(given);
    const next = Math.max(1, Math.min(MOST_LANES, now + by));
    return next === now ? undefined : onSet(next);
  };
  useKeys({ 'lane-more': () => shift(1), 'lane-less': () => shift(-1) });
  return useMemo(
    () => (isCounted ? { given, estimated, onSet } : null),
    [isCounted, given, estimated, onSet],
  );
}
