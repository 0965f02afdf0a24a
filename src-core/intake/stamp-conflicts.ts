import { type EpochMs, MS_PER_SECOND, type Seconds } from '../platform/units.ts';
import { findNameInstants, getSecondsOutside } from './header-meaning.ts';
import { isPlausibleDate } from './plausible-date.ts';
import type { Stamp, StampProblem, StampSource } from './stamp.ts';
import type { StampCase } from './stamp-case.ts';
import { SAME_INSTANT_SECONDS } from './stamp-rules.ts';

type Disagreement = Extract<StampProblem, { code: 'stamp-sources-disagree' }>;

/**
 * Sources that contradict the chosen one: the movie's header and the file's name, where they lie outside the
 * recording as believed. The file system's date is not asked, since copying alone changes it.
 */
export function findDisagreements(stamp: Stamp, stampCase: StampCase): readonly Disagreement[] {
  const { startMs } = stamp;
  if (startMs === null || stamp.source === 'file-time') return [];
  const { input, nameDate } = stampCase;
  const problems: Disagreement[] = [];
  const note = (other: StampSource, candidates: readonly EpochMs[]) => {
    const differenceSeconds = findDifference(stamp, candidates, input.facts?.durationSeconds ?? 0);
    if (differenceSeconds !== null) {
      problems.push({ code: 'stamp-sources-disagree', chosen: stamp.source, other, differenceSeconds });
    }
  };
  if (stamp.source !== 'movie-header') note('movie-header', findHeaderInstants(stampCase));
  if (stamp.source !== 'file-name' && nameDate) {
    note('file-name', findNameInstants(nameDate, input.zone, startMs));
  }
  return problems;
}

function findHeaderInstants({ input }: StampCase): readonly EpochMs[] {
  return (input.facts?.dates ?? []).flatMap(({ field, instantMs }) =>
    field === 'movie-header' && instantMs !== null && isPlausibleDate(instantMs, input.nowMs)
      ? [instantMs]
      : [],
  );
}

/** How far the nearest candidate lies from the recording; null where it lies within, or there is none. */
function findDifference(
  { startMs, meaning }: Stamp,
  candidates: readonly EpochMs[],
  durationSeconds: Seconds,
): Seconds | null {
  if (candidates.length === 0 || startMs === null) return null;
  // A date that may be the end puts the beginning up to one length earlier.
  const earliestMs = meaning === 'unknown' ? startMs - durationSeconds * MS_PER_SECOND : startMs;
  const lengthSeconds = meaning === 'unknown' ? 2 * durationSeconds : durationSeconds;
  const nearest = Math.min(...candidates.map((ms) => getSecondsOutside(ms, earliestMs, lengthSeconds)));
  return nearest > SAME_INSTANT_SECONDS ? nearest : null;
}
