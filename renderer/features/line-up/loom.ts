import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SlotIndex, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { FlagCode } from '../../../src-core/matching/flag.ts';
import type { EpochMs } from '../../../src-core/platform/units.ts';
import { areRoutesKnown, getFlagStep, isOpen } from '../../client/flag-step.ts';
import { type ClockAxis, getPercent, isShown } from './clock-axis.ts';

/** How a thing of the loom stands: in order, open before the teacher, settled by the teacher, or not in use. */
export type LoomLook = 'quiet' | 'hot' | 'kept' | 'off';

/** A clip on the clock. */
export interface Ticket {
  readonly clip: ClipView;
  readonly squad: SquadCode;
  /** Null: nobody knows where it was filmed. */
  readonly station: StationCode | null;
  /** The machine inferred the station. */
  readonly isGuess: boolean;
  /** Null: it has no time of its own and stands between its neighbours. */
  readonly startMs: EpochMs | null;
  /** Its middle, in per cent of the clock, before tickets make room for each other. */
  readonly percent: number;
  readonly durationSeconds: number;
  /** Its time is doubted. */
  readonly isDoubtful: boolean;
  /** The slot that a thread leads from; null: none. */
  readonly slot: SlotIndex | null;
  readonly look: LoomLook;
  /** What its drawing shows; null: in order. */
  readonly flag: FlagCode | null;
}

/** A slot of a squad's route. */
export interface LoomSlot {
  readonly slot: SlotIndex;
  readonly station: StationCode;
  readonly topPercent: number;
  readonly heightPercent: number;
  /** `hot`: a clip is missing and nobody has said so; `kept`: missing, and settled. */
  readonly look: 'quiet' | 'hot' | 'kept';
}

/** One squad's lacing card: route, tickets and threads. */
export interface LoomColumn {
  readonly squad: SquadCode;
  readonly slots: readonly LoomSlot[];
  /** In the order filmed. */
  readonly tickets: readonly Ticket[];
  readonly filled: number;
}

/** A column for each squad. */
export function buildLoom(view: LessonView, axis: ClockAxis): readonly LoomColumn[] {
  const flags = new Map(areRoutesKnown(view) ? view.flags.map((entry) => [entry.key, entry]) : []);
  const missing = new Map(
    view.flags.flatMap((entry) =>
      entry.flag.code === 'missing' ? [[`${entry.flag.squad}:${entry.flag.slot}`, entry] as const] : [],
    ),
  );
  return view.plan.squads.map(({ code, route }) => {
    const clips = view.clips.filter(({ squad, aside }) => squad === code && isShown(aside));
    const tickets = placeInTime(
      clips.map((clip) => buildTicket(clip, code, flags)),
      axis,
    );
    const slots = route.map((station, slot): LoomSlot => {
      const top = getPercent(axis, axis.bounds[slot] ?? axis.toMs);
      const gone = missing.get(`${code}:${slot}`);
      return {
        slot,
        station,
        topPercent: top,
        heightPercent: getPercent(axis, axis.bounds[slot + 1] ?? axis.toMs) - top,
        look: gone && areRoutesKnown(view) ? (isOpen(gone) ? 'hot' : 'kept') : 'quiet',
      };
    });
    const filled = new Set(tickets.filter(({ look }) => look !== 'off').map(({ slot }) => slot));
    filled.delete(null);
    return { squad: code, slots, tickets, filled: filled.size };
  });
}

type Unplaced = Omit<Ticket, 'percent'>;

function buildTicket(
  clip: ClipView,
  squad: SquadCode,
  flags: ReadonlyMap<string, LessonView['flags'][number]>,
): Unplaced {
  const { assignment, time } = clip;
  const line = clip.flags.flatMap((key) => {
    const entry = flags.get(key);
    return entry && getFlagStep(entry.flag.code) === 'line-up' ? [entry] : [];
  });
  const open = line.find(isOpen) ?? null;
  return {
    clip,
    squad,
    station: assignment?.station ?? clip.card?.code ?? null,
    isGuess: assignment?.stationFrom === 'inferred',
    startMs: time?.startMs ?? null,
    durationSeconds: clip.durationSeconds ?? 0,
    isDoubtful: time === null || time.doubt !== null,
    slot: assignment?.slot ?? null,
    look: open ? 'hot' : getCalmLook(clip, line.length > 0),
    flag: (open ?? line[0])?.flag.code ?? null,
  };
}

function getCalmLook({ aside, assignment }: ClipView, wasFlagged: boolean): LoomLook {
  if (aside !== null || assignment?.role === 'retake' || assignment?.role === 'extra') return 'off';
  return wasFlagged ? 'kept' : 'quiet';
}

/** Clips without a time stand evenly between those before and after them. */
function placeInTime(tickets: readonly Unplaced[], axis: ClockAxis): readonly Ticket[] {
  const dated = tickets.map(({ startMs, durationSeconds }) =>
    startMs === null ? null : startMs + durationSeconds * 500,
  );
  return tickets
    .map((ticket, at) => ({
      ...ticket,
      percent: getPercent(axis, dated[at] ?? findMiddle(dated, at, axis)),
    }))
    .toSorted((one, other) => one.percent - other.percent);
}

function findMiddle(dated: readonly (EpochMs | null)[], at: number, axis: ClockAxis): EpochMs {
  const isDated = (ms: EpochMs | null) => ms !== null;
  const before = dated.slice(0, at).findLast(isDated) ?? axis.bounds[0] ?? axis.fromMs;
  const after = dated.slice(at + 1).find(isDated) ?? axis.bounds.at(-1) ?? axis.toMs;
  return (before + after) / 2;
}
