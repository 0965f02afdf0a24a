import type { Seconds } from '../../platform/units.ts';
import type { MovieDraft } from './movie-draft.ts';

/**
 * How long the recording is. `mehd` is the whole's own statement; without it the longest of what the movie header,
 * the fragments and the segment index say, since a fragmented file's header counts its own samples only, none as
 * a rule; without any of these the longest track. Null where nothing says so.
 */
export function findMovieDuration(draft: MovieDraft): Seconds | null {
  const inMovieUnits = (units: number | null) =>
    units !== null && draft.timescale > 0 ? units / draft.timescale : 0;
  const fragments = draft.tracks.map(({ id, timescale }) =>
    timescale > 0 ? (draft.fragments.get(id)?.end ?? 0) / timescale : 0,
  );
  const tracks = draft.tracks.map(({ duration, timescale }) =>
    duration !== null && timescale > 0 ? duration / timescale : 0,
  );
  return (
    findLongest([inMovieUnits(draft.fragmentsDuration)]) ??
    findLongest([inMovieUnits(draft.duration), ...fragments, ...draft.indexedSeconds.values()]) ??
    findLongest(tracks)
  );
}

function findLongest(seconds: readonly Seconds[]): Seconds | null {
  const longest = Math.max(0, ...seconds);
  return longest > 0 ? longest : null;
}
