import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Seconds } from '../../../src-core/platform/units.ts';
import { type ClipEvidence, getEvidence } from './clip-evidence.ts';

/** One line of the count sheet; shares are of the sheet's height, 0 at the top. */
export interface CountLine {
  /** The rep's number from 1; null for a still that only shows the clip at an even step. */
  readonly number: number | null;
  /** The moment that is shown. */
  readonly atSeconds: Seconds;
  /** Where this line's time begins and ends, for looping it. */
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
  readonly top: number;
  readonly height: number;
}

/** A stretch that is folded away because nothing is counted there. */
export interface Fold {
  readonly kind: 'before' | 'after';
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
}

/** The count sheet of one clip: lines on one axis of time, downwards. */
export interface CountSheet {
  readonly lines: readonly CountLine[];
  readonly folds: readonly Fold[];
  /** Why there are no rep lines; null where there are. */
  readonly without: 'not-counted' | 'none-found' | 'no-length' | null;
  readonly hasLanes: boolean;
  /** The time that the sheet's height stands for, folds left out. */
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
}

/** Stills of a clip whose reps are not known: each at least 40 px high at the smallest window. */
const EVEN_STILLS = 10;

/** The count sheet of a clip: a line a rep where reps were counted, else evenly spaced stills. */
export function buildCountSheet(clip: ClipView, evidence: ClipEvidence = getEvidence(clip)): CountSheet {
  const length = clip.durationSeconds ?? 0;
  const { reps, unison } = evidence;
  const hasLanes = unison !== null && unison.lanes.length > 0;
  if (length <= 0) {
    return {
      lines: [],
      folds: [],
      without: 'no-length',
      hasLanes: false,
      fromSeconds: 0,
      toSeconds: 0,
    };
  }
  if (!reps?.count || !reps.spanSeconds) {
    const lines = Array.from({ length: EVEN_STILLS }, (_, at) => ((at + 0.5) * length) / EVEN_STILLS);
    return {
      lines: layOut(lines, evenEdges(length), [0, length], false),
      folds: [],
      without: reps ? 'none-found' : 'not-counted',
      hasLanes,
      fromSeconds: 0,
      toSeconds: length,
    };
  }
  const [from, to] = reps.spanSeconds;
  return {
    lines: layOut(reps.timesSeconds, [from, ...reps.timesSeconds], [from, to], true),
    folds: listFolds(from, to, length),
    without: null,
    hasLanes,
    fromSeconds: from,
    toSeconds: to,
  };
}

function evenEdges(length: Seconds): readonly Seconds[] {
  return Array.from({ length: EVEN_STILLS + 1 }, (_, at) => (at * length) / EVEN_STILLS);
}

function layOut(
  moments: readonly Seconds[],
  edges: readonly Seconds[],
  [from, to]: readonly [Seconds, Seconds],
  isCounted: boolean,
): readonly CountLine[] {
  const height = 1 / Math.max(1, moments.length);
  return moments.map((atSeconds, at) => ({
    number: isCounted ? at + 1 : null,
    atSeconds,
    fromSeconds: edges[at] ?? from,
    toSeconds: edges[at + 1] ?? to,
    top: at * height,
    height,
  }));
}

/** Shorter stretches are not worth a line of their own. */
const SHORTEST_FOLD_SECONDS = 0.5;

function listFolds(from: Seconds, to: Seconds, length: Seconds): readonly Fold[] {
  const folds: Fold[] = [
    { kind: 'before', fromSeconds: 0, toSeconds: from },
    { kind: 'after', fromSeconds: to, toSeconds: length },
  ];
  return folds.filter((fold) => fold.toSeconds - fold.fromSeconds >= SHORTEST_FOLD_SECONDS);
}

/** The line that a moment falls into; -1 before the first and behind the last. */
export function findLineAt(sheet: CountSheet, seconds: Seconds): number {
  return sheet.lines.findIndex(({ fromSeconds, toSeconds }) => seconds >= fromSeconds && seconds < toSeconds);
}

/**
 * Where a moment lies on the sheet, as a share of its height: within its line, so that stills, traces and marks keep
 * together however uneven the reps are. Outside of the lines, the nearer end.
 */
export function getShareOf(sheet: CountSheet, seconds: Seconds): number {
  const line = sheet.lines[findLineAt(sheet, seconds)];
  if (!line) return seconds < sheet.fromSeconds ? 0 : 1;
  const within = (seconds - line.fromSeconds) / Math.max(0.001, line.toSeconds - line.fromSeconds);
  return line.top + line.height * within;
}
