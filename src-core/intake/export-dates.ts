import { type EpochMs, MS_PER_SECOND, type Seconds } from '../platform/units.ts';

/** A clip's date as its file gives it. */
export interface ExportSuspect {
  readonly id: string;
  /** The instant that was read, not the start made of it; null is left out of account. */
  readonly readMs: EpochMs | null;
  /** Null counts as none: such a clip is suspected by the time of import only. */
  readonly durationSeconds: Seconds | null;
}

/** Fewer clips than these may be a copy and its original, or one that was borrowed. */
const FEWEST_CLIPS = 3;

/** Whole seconds and a camera that closes its file late make so much of an overlap by themselves. */
const SLACK_SECONDS: Seconds = 2;

/** An export writes its files this near to the import, which is part of the same errand. */
const IMPORT_REACH_SECONDS: Seconds = 120;

interface Dated {
  readonly id: string;
  readonly readMs: EpochMs;
  readonly durationSeconds: Seconds;
}

/**
 * Clips whose dates were written by an export and not by the camera — github.com/DmcSDK/cordova-plugin-mediaPicker
 * #77: three or more of one tablet, each dated nearer to the one before than either of them lasts, or three or
 * more dated at the import. One camera cannot film two clips at once, whichever end its dates name.
 *
 * @param clips clips of ONE tablet: two tablets do film at once
 * @param importedMs when the files were brought here; null where that is not known
 */
export function findExportDated(
  clips: readonly ExportSuspect[],
  importedMs: EpochMs | null = null,
): ReadonlySet<string> {
  const byDate = clips
    .flatMap(({ id, readMs, durationSeconds }) =>
      readMs === null ? [] : [{ id, readMs, durationSeconds: durationSeconds ?? 0 }],
    )
    .sort((a, b) => a.readMs - b.readMs);
  const atImport = byDate.filter(({ readMs }) => isAtImport(readMs, importedMs));
  const suspects = [...findCrowdedRuns(byDate), atImport].filter(({ length }) => length >= FEWEST_CLIPS);
  return new Set(suspects.flat().map(({ id }) => id));
}

function findCrowdedRuns(byDate: readonly Dated[]): readonly (readonly Dated[])[] {
  const runs: Dated[][] = [];
  for (const clip of byDate) {
    const last = runs.at(-1);
    const previous = last?.at(-1);
    if (last && previous && isImpossible(previous, clip)) last.push(clip);
    else runs.push([clip]);
  }
  return runs;
}

/** Starts lie at least the first clip's length apart, stops at least the second's: less than both is impossible. */
function isImpossible(earlier: Dated, later: Dated): boolean {
  const shorter = Math.min(earlier.durationSeconds, later.durationSeconds);
  return (later.readMs - earlier.readMs) / MS_PER_SECOND < shorter - SLACK_SECONDS;
}

function isAtImport(readMs: EpochMs, importedMs: EpochMs | null): boolean {
  return importedMs !== null && Math.abs(readMs - importedMs) <= IMPORT_REACH_SECONDS * MS_PER_SECOND;
}
