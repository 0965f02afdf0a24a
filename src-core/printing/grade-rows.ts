import type { StripStill } from '../evidence/strip.ts';
import type { Plan, SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Override } from '../marking/decisions.ts';
import type { SquadScore } from '../marking/points.ts';
import type { SlotScore } from '../marking/squad-score.ts';
import type { ClipRole } from '../matching/assignment.ts';
import type { ClipId } from '../matching/observation.ts';
import type { EpochMs } from '../platform/units.ts';
import type { SheetClip } from './grade-input.ts';
import { findFilledSlot } from './route-walk.ts';
import type { Said } from './said.ts';
import type { SheetOrder } from './sheet-order.ts';

/** How a clip stands with one criterion, as it is printed: in ink where the teacher answered, else in pencil. */
export interface PaperAnswer {
  /** Null: not answered, and nothing is proposed. */
  readonly met: boolean | null;
  readonly isInk: boolean;
}

/** One line of a squad's page: a clip, or a slot that has none. */
export interface GradeRow {
  readonly role: ClipRole | 'no-clip';
  /** Null: nobody knows where the clip was filmed. */
  readonly station: {
    readonly code: StationCode;
    readonly place: Said;
    readonly exercise: Said;
    readonly reps: number;
  } | null;
  /** The slot that is filled, taken again or empty; null for a clip of no slot. */
  readonly slot: SlotIndex | null;
  readonly startMs: EpochMs | null;
  /** Null without a clip. */
  readonly fileName: string | null;
  /** In the rubric's order; empty where the clip fills no slot. */
  readonly answers: readonly PaperAnswer[];
  /** Changes by hand included; null where the line earns nothing because it fills no slot. */
  readonly points: number | null;
  /** Whether a person stands behind the points. */
  readonly isInk: boolean;
  /** Out of order and not cleared. */
  readonly isBroken: boolean;
  readonly override: Override | null;
  /** Null without a clip. */
  readonly strip: RowStrip | null;
}

/** The stills of one line, or why there are none. */
export type RowStrip =
  | { readonly look: 'shown' | 'blurred'; readonly clip: ClipId; readonly stills: readonly StripStill[] }
  /** `list`: a pupil who may be in the picture is on the do-not-film list. */
  | { readonly look: 'none'; readonly why: 'asked' | 'list' };

/**
 * Stills a line at most. More reps than these are shown by every second, third, … of them, with their numbers; pictures
 * that count nothing only show what was done where.
 */
const MOST_STILLS = { counted: 40, even: 6 } as const;

interface RowsInput {
  readonly plan: Plan;
  readonly score: SquadScore;
  readonly clips: readonly SheetClip[];
  /** Squads with a pupil on the do-not-film list. */
  readonly hidden: ReadonlySet<SquadCode>;
  readonly stills: SheetOrder['stills'];
}

/** The lines of one squad: its clips in the order of filming, then the slots without a clip. */
export function buildGradeRows(input: RowsInput): readonly GradeRow[] {
  const filled = new Set(input.clips.map(findFilledSlot));
  const empty = input.score.slots.filter(({ slot }) => !filled.has(slot));
  return [
    ...input.clips.map((clip) => buildClipRow(input, clip)),
    ...empty.map((slot) => buildEmptyRow(input, slot)),
  ];
}

function buildClipRow(input: RowsInput, clip: SheetClip): GradeRow {
  const { role, station, slot } = clip.assignment;
  const filled = findFilledSlot(clip);
  const score = input.score.slots.find((one) => one.slot === filled) ?? null;
  return {
    role,
    station: findStation(input.plan, station),
    slot,
    startMs: clip.startMs,
    fileName: clip.fileName,
    answers: (score?.clip?.criteria ?? []).map(({ shown, confirmed }) => ({ met: shown, isInk: confirmed })),
    points: score && addSlotPoints(input.score, score.slot),
    isInk: score?.clip?.confirmed === true,
    isBroken: score?.order.broken === true,
    override: score?.override ?? null,
    strip: buildStrip(input, clip),
  };
}

function buildEmptyRow({ plan, score }: RowsInput, { slot, station, override }: SlotScore): GradeRow {
  return {
    role: 'no-clip',
    station: findStation(plan, station),
    slot,
    startMs: null,
    fileName: null,
    answers: [],
    points: addSlotPoints(score, slot),
    isInk: true,
    isBroken: false,
    override,
    strip: null,
  };
}

function buildStrip({ hidden, stills }: RowsInput, { id, mayShow, strip }: SheetClip): RowStrip {
  if (mayShow.some((squad) => hidden.has(squad))) return { look: 'none', why: 'list' };
  if (stills === 'left-out') return { look: 'none', why: 'asked' };
  const most = strip.some(({ number }) => number !== null) ? MOST_STILLS.counted : MOST_STILLS.even;
  const step = Math.ceil(strip.length / most);
  return { look: stills, clip: id, stills: strip.filter((_, at) => (at + 1) % step === 0) };
}

/** What a slot gave under the plan's rule, a change of its clip by hand included. */
function addSlotPoints({ sum }: SquadScore, slot: SlotIndex): number {
  const own = sum.parts.filter((part) => part.code !== 'squad-criterion' && part.slot === slot);
  return own.reduce((total, { points }) => total + points, 0);
}

function findStation(plan: Plan, code: StationCode | null): GradeRow['station'] {
  const at = plan.stations.findIndex((station) => station.code === code);
  const found = plan.stations[at];
  if (!found) return null;
  return {
    code: found.code,
    place: { text: found.place, field: `stations[${at}].place` },
    exercise: { text: found.exercise, field: `stations[${at}].exercise` },
    reps: found.reps,
  };
}
