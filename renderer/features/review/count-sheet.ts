import type { EvidenceView, RepsView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Seconds } from '../../../src-core/platform/units.ts';

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
  /** The picture as JPEG in base64; null: to be cut from the clip. */
  readonly jpeg: string | null;
}

/** A stretch that is folded away because nothing is counted there. */
export interface Fold {
  readonly kind: 'before' | 'after';
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
}

/** Why a count sheet has no rep lines. */
export type Uncounted = 'asked' | 'unwatched' | 'none-found' | 'in-vain' | 'no-length';

/** The count sheet of one clip: lines on one axis of time, downwards. */
export interface CountSheet {
  readonly lines: readonly CountLine[];
  readonly folds: readonly Fold[];
  /** Null where there are rep lines. `asked`: what is known of the clip is on its way. */
  readonly without: Uncounted | null;
  /** The time that the sheet's height stands for, folds left out. */
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
}

/** The count sheet of a clip: a line a rep where reps were counted, else evenly spaced stills. */
export function buildCountSheet(clip: ClipView, evidence: EvidenceView | null): CountSheet {
  const length = clip.durationSeconds ?? 0;
  if (length <= 0 || !evidence) {
    const without = length <= 0 ? 'no-length' : 'asked';
    return { lines: [], folds: [], without, fromSeconds: 0, toSeconds: length };
  }
  const { strip, reps } = evidence;
  if (!reps?.count || !reps.spanSeconds) {
    const edges = Array.from({ length: strip.length + 1 }, (_, at) => (at * length) / strip.length);
    return {
      lines: strip.map((still, at) =>
        layOut(still, strip.length, at, [edges[at] ?? 0, edges[at + 1] ?? length]),
      ),
      folds: [],
      without: findReason(clip, reps),
      fromSeconds: 0,
      toSeconds: length,
    };
  }
  const [from, to] = reps.spanSeconds;
  return {
    lines: strip.map((still, at) => layOut(still, strip.length, at, findStretch(reps, at))),
    folds: listFolds(from, to, length),
    without: null,
    fromSeconds: from,
    toSeconds: to,
  };
}

function findReason({ seen }: ClipView, reps: RepsView | null): Uncounted {
  if (seen.watched === 'in-vain') return 'in-vain';
  return reps ? 'none-found' : 'unwatched';
}

function layOut(
  { number, atSeconds, jpeg }: EvidenceView['strip'][number],
  lines: number,
  at: number,
  [fromSeconds, toSeconds]: readonly [Seconds, Seconds],
): CountLine {
  const height = 1 / lines;
  return { number, atSeconds, jpeg, fromSeconds, toSeconds, top: at * height, height };
}

/** A rep's own time: from the end of the one before, or from where its stretch begins after a pause, to its end. */
function findStretch({ timesSeconds, runsSeconds }: RepsView, at: number): readonly [Seconds, Seconds] {
  const to = timesSeconds[at] ?? 0;
  const before = timesSeconds[at - 1] ?? 0;
  const begin = runsSeconds.findLast(([from]) => from < to)?.[0] ?? 0;
  return [Math.max(before, begin), to];
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

/** The last moment of a line that is still its own: a rep ends where the next one begins. */
const BEFORE_END_SECONDS = 0.02;

/** The moment at which the film shows a line's still and is within the line. */
export function getStillMoment({ atSeconds, fromSeconds, toSeconds }: CountLine): Seconds {
  return Math.max(fromSeconds, Math.min(atSeconds, toSeconds - BEFORE_END_SECONDS));
}

/** The line before or after a moment's; null where there is none. */
export function findLineBeside(sheet: CountSheet, seconds: Seconds, by: 1 | -1): CountLine | null {
  const at = findLineAt(sheet, seconds);
  if (at >= 0) return sheet.lines[at + by] ?? null;
  return by > 0
    ? (sheet.lines.find(({ fromSeconds }) => fromSeconds > seconds) ?? null)
    : (sheet.lines.findLast(({ toSeconds }) => toSeconds <= seconds) ?? null);
}

/** The line that a moment falls into; -1 before the first, behind the last, and in a pause. */
export function findLineAt(sheet: CountSheet, seconds: Seconds): number {
  return sheet.lines.findIndex(({ fromSeconds, toSeconds }) => seconds >= fromSeconds && seconds < toSeconds);
}

/**
 * Where a moment lies on the sheet, as a share of its height: within its line, so that stills, traces and marks keep
 * together however uneven the reps are. A pause has no height; outside of the lines, the nearer end.
 */
export function getShareOf(sheet: CountSheet, seconds: Seconds): number {
  const line = sheet.lines[findLineAt(sheet, seconds)];
  if (line) {
    const within = (seconds - line.fromSeconds) / Math.max(0.001, line.toSeconds - line.fromSeconds);
    return line.top + line.height * within;
  }
  return sheet.lines.find(({ fromSeconds }) => seconds < fromSeconds)?.top ?? 1;
}

/** The moment that a share of the sheet's height stands for; {@link getShareOf} leads back, pauses left out. */
export function getMomentAt(sheet: CountSheet, share: number): Seconds {
  const line = sheet.lines.find(({ top, height }) => share < top + height) ?? sheet.lines.at(-1);
  if (!line) return sheet.fromSeconds;
  const within = Math.max(0, Math.min(1, (share - line.top) / line.height));
  return line.fromSeconds + within * (line.toSeconds - line.fromSeconds);
}
