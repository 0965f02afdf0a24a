import type { EvidenceView, RepsView, UnisonView } from '../../../src-core/contract/evidence-view.ts';
import { type CountSheet, getShareOf } from './count-sheet.ts';

/** A mark of one lane at one rep; shares of the drawing's width and height. */
export interface LaneMark {
  readonly lane: number;
  readonly rep: number;
  readonly top: number;
  /** `gone`: the lane did not do this rep. */
  readonly look: 'on' | 'off' | 'gone';
}

/** What is drawn beside the stills, on the same axis; paths are in a box of 100 by 100. */
export interface EvidenceDrawing {
  /** Empty where no motion is known. */
  readonly trace: string;
  readonly marks: readonly LaneMark[];
  /** Left to right; `x` is a share of the picture's width. Empty where lanes are not known. */
  readonly lanes: readonly { readonly x: number; readonly lagSeconds: number; readonly isOff: boolean }[];
  /** The teacher says how many lanes there are, or where. */
  readonly areLanesGiven: boolean;
  /** Empty where no unison is known. */
  readonly unison: string;
  readonly score: number | null;
}

/** How far from the middle of its column the trace may swing, of 100. */
const SWING = 42;

/**
 * The drawing of a clip's motion, lanes and unison.
 *
 * @param getShare where a moment lies on the axis; rep by rep as the sheet has it unless given
 */
export function drawEvidence(
  evidence: EvidenceView | null,
  sheet: CountSheet,
  getShare = (seconds: number) => getShareOf(sheet, seconds),
): EvidenceDrawing {
  const axis: Axis = { sheet, getShare };
  // Lanes are marked rep by rep: without rep lines there is nowhere to mark them.
  const unison = sheet.without === null ? (evidence?.unison ?? null) : null;
  const { lanes = [], reachSeconds = 0 } = unison ?? {};
  return {
    trace: drawTrace(axis, evidence?.reps?.trace ?? null),
    marks: lanes.flatMap((lane, at) =>
      lane.repLagsSeconds.flatMap((lag, rep) => listMark(axis, { lane: at, rep, lag, reachSeconds })),
    ),
    lanes: lanes.map(({ x, lagSeconds }) => ({ x, lagSeconds, isOff: Math.abs(lagSeconds) > reachSeconds })),
    areLanesGiven: unison?.areLanesGiven ?? false,
    unison: drawUnison(axis, unison),
    score: unison?.score ?? null,
  };
}

interface Axis {
  readonly sheet: CountSheet;
  readonly getShare: (seconds: number) => number;
}

function drawTrace({ sheet, getShare }: Axis, trace: RepsView['trace'] | null): string {
  if (!trace) return '';
  const first = Math.ceil(sheet.fromSeconds * trace.rateHz);
  const last = Math.min(trace.signal.length - 1, Math.floor(sheet.toSeconds * trace.rateHz));
  const drawn = trace.signal.slice(first, last + 1);
  // The line fills its column whatever the movement's strength: it is looked at for its turns.
  const most = drawn.reduce((found, value) => Math.max(found, Math.abs(value)), LEAST_SWING);
  const points = drawn.map((value, at) => {
    const y = 100 * getShare((first + at) / trace.rateHz);
    return `${(50 + (SWING * value) / most).toFixed(1)} ${y.toFixed(2)}`;
  });
  return points.length > 1 ? `M${points.join('L')}` : '';
}

/** A movement weaker than this is drawn as weak as it is. */
const LEAST_SWING = 0.1;

function listMark(
  { sheet, getShare }: Axis,
  mark: {
    readonly lane: number;
    readonly rep: number;
    readonly lag: number | null;
    readonly reachSeconds: number;
  },
): LaneMark[] {
  const line = sheet.lines[mark.rep];
  if (!line) return [];
  const { lane, rep, lag } = mark;
  if (lag === null) return [{ lane, rep, top: getShare(middle(line)), look: 'gone' }];
  // A late pupil's mark hangs lower, an early one's higher, within the rep's own line.
  const at = Math.max(line.fromSeconds, Math.min(line.toSeconds - 0.001, middle(line) + lag));
  return [{ lane, rep, top: getShare(at), look: Math.abs(lag) > mark.reachSeconds ? 'off' : 'on' }];
}

function middle({ fromSeconds, toSeconds }: { readonly fromSeconds: number; readonly toSeconds: number }) {
  return (fromSeconds + toSeconds) / 2;
}

function drawUnison({ getShare }: Axis, unison: UnisonView | null): string {
  const points = (unison?.windows ?? []).map(({ fromSeconds, toSeconds, score }) => {
    const top = 100 * getShare((fromSeconds + toSeconds) / 2);
    return `${(100 * Math.max(0, Math.min(1, score))).toFixed(1)} ${top.toFixed(2)}`;
  });
  if (points.length === 0) return '';
  const [first = ''] = points;
  const last = points.at(-1) ?? first;
  return `M0 0L${first.split(' ')[0]} 0L${points.join('L')}L${last.split(' ')[0]} 100L0 100Z`;
}
