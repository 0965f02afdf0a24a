import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import { type ClipEvidence, getEvidence } from './clip-evidence.ts';
import { type CountSheet, getShareOf } from './count-sheet.ts';

/** A mark of one lane at one rep; shares of the drawing's width and height. */
export interface LaneMark {
  readonly lane: number;
  readonly rep: number;
  readonly top: number;
  /** `gone`: the lane did not do this rep. */
  readonly look: 'on' | 'late' | 'gone';
}

/** What is drawn beside the stills, on the same axis; paths are in a box of 100 by 100. */
export interface EvidenceDrawing {
  /** Empty where no motion is known. */
  readonly trace: string;
  readonly marks: readonly LaneMark[];
  readonly lanes: readonly { readonly lagSeconds: number; readonly isLate: boolean }[];
  /** Empty where no unison is known. */
  readonly unison: string;
  readonly score: number | null;
}

/** How far from the middle of its column the trace may swing, of 100. */
const SWING = 42;

/** The drawing of a clip's motion, lanes and unison; `toleranceSeconds`: the plan's, above which a lag is late. */
export function drawEvidence(
  clip: ClipView,
  sheet: CountSheet,
  toleranceSeconds: number,
  evidence: ClipEvidence = getEvidence(clip),
): EvidenceDrawing {
  const lanes = evidence.unison?.lanes ?? [];
  return {
    trace: drawTrace(sheet, evidence.reps?.trace),
    marks: lanes.flatMap((lane, at) =>
      lane.repLagsSeconds.flatMap((lag, rep) => listMark(sheet, { lane: at, rep, lag, toleranceSeconds })),
    ),
    lanes: lanes.map(({ lagSeconds }) => ({ lagSeconds, isLate: lagSeconds > toleranceSeconds })),
    unison: drawUnison(sheet, evidence.unison),
    score: evidence.unison?.score ?? null,
  };
}

function drawTrace(
  sheet: CountSheet,
  trace: { readonly rateHz: number; readonly signal: ArrayLike<number> } | undefined,
): string {
  if (!trace) return '';
  const first = Math.ceil(sheet.fromSeconds * trace.rateHz);
  const last = Math.min(trace.signal.length - 1, Math.floor(sheet.toSeconds * trace.rateHz));
  const points: string[] = [];
  for (let at = first; at <= last; at += 1) {
    const x = 50 + SWING * Math.max(-1, Math.min(1, trace.signal[at] ?? 0));
    points.push(`${x.toFixed(1)} ${(100 * getShareOf(sheet, at / trace.rateHz)).toFixed(2)}`);
  }
  return points.length > 1 ? `M${points.join('L')}` : '';
}

function listMark(
  sheet: CountSheet,
  mark: {
    readonly lane: number;
    readonly rep: number;
    readonly lag: number | null;
    readonly toleranceSeconds: number;
  },
): LaneMark[] {
  const line = sheet.lines[mark.rep];
  if (!line) return [];
  const { lane, rep, lag } = mark;
  if (lag === null) return [{ lane, rep, top: getShareOf(sheet, middle(line)), look: 'gone' }];
  // A late pupil's mark hangs lower, an early one's higher, within the rep's own line.
  const at = Math.max(line.fromSeconds, Math.min(line.toSeconds - 0.001, middle(line) + lag));
  return [{ lane, rep, top: getShareOf(sheet, at), look: lag > mark.toleranceSeconds ? 'late' : 'on' }];
}

function middle({ fromSeconds, toSeconds }: { readonly fromSeconds: number; readonly toSeconds: number }) {
  return (fromSeconds + toSeconds) / 2;
}

function drawUnison(sheet: CountSheet, unison: ClipEvidence['unison']): string {
  const points = (unison?.windows ?? []).map(({ fromSeconds, toSeconds, score }) => {
    const top = 100 * getShareOf(sheet, (fromSeconds + toSeconds) / 2);
    return `${(100 * Math.max(0, Math.min(1, score))).toFixed(1)} ${top.toFixed(2)}`;
  });
  if (points.length === 0) return '';
  const [first = ''] = points;
  const last = points.at(-1) ?? first;
  return `M0 0L${first.split(' ')[0]} 0L${points.join('L')}L${last.split(' ')[0]} 100L0 100Z`;
}
