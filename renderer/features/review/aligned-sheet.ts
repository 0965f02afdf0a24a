import type { Seconds } from '../../../src-core/platform/units.ts';
import type { CountSheet } from './count-sheet.ts';

/** Count sheets of several clips on one axis, 0 at each one's first rep; equal heights are equal times. */
export interface AlignedSheets {
  /** In the order given; their shares are of the common axis, their moments the clip's own. */
  readonly sheets: readonly AlignedSheet[];
  /** The time that the axis stands for. */
  readonly lengthSeconds: Seconds;
  /** Mean length of a rep of the quickest squad; null: nobody's reps are known. */
  readonly shortestRepSeconds: Seconds | null;
}

/** One clip's count sheet on that axis. */
export interface AlignedSheet extends CountSheet {
  /** The moment that stands at the top: the first rep's begin; 0, the clip's own, where reps are not known. */
  readonly firstSeconds: Seconds;
  /** Where a moment of the clip lies on the axis. */
  readonly getShare: (seconds: Seconds) => number;
}

/** Lays count sheets on one axis; it is as long as the longest of them. */
export function alignSheets(sheets: readonly CountSheet[]): AlignedSheets {
  const lengthSeconds = Math.max(1, ...sheets.map((sheet) => sheet.toSeconds - getFirst(sheet)));
  const repSeconds = sheets.flatMap(({ without, lines }) => {
    const sum = lines.reduce((total, { fromSeconds, toSeconds }) => total + toSeconds - fromSeconds, 0);
    return without === null && sum > 0 ? [sum / lines.length] : [];
  });
  return {
    lengthSeconds,
    shortestRepSeconds: repSeconds.length === 0 ? null : Math.min(...repSeconds),
    sheets: sheets.map((sheet) => alignSheet(sheet, lengthSeconds)),
  };
}

function getFirst({ without, fromSeconds }: CountSheet): Seconds {
  return without === null ? fromSeconds : 0;
}

function alignSheet(sheet: CountSheet, lengthSeconds: Seconds): AlignedSheet {
  const firstSeconds = getFirst(sheet);
  const getShare = (seconds: Seconds) => (seconds - firstSeconds) / lengthSeconds;
  const lines = sheet.lines.map((line) => {
    const top = getShare(line.fromSeconds);
    return { ...line, top, height: getShare(line.toSeconds) - top };
  });
  return { ...sheet, lines, firstSeconds, getShare };
}

/** The same lines with moments that count from a clip's first rep, as a control over several films runs. */
export function countFromFirstRep(sheet: CountSheet): CountSheet {
  const first = getFirst(sheet);
  return {
    ...sheet,
    fromSeconds: sheet.fromSeconds - first,
    toSeconds: sheet.toSeconds - first,
    lines: sheet.lines.map((line) => ({
      ...line,
      atSeconds: line.atSeconds - first,
      fromSeconds: line.fromSeconds - first,
      toSeconds: line.toSeconds - first,
    })),
  };
}
