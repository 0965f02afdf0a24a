import type { Plan, SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { PlacedClip } from './observation.ts';
import { buildTimetable, type Timetable } from './timetable.ts';
import type { WalkClip } from './walk-clip.ts';

/** One squad's clips and the route they are held against. */
export interface SquadClips {
  readonly squad: SquadCode;
  readonly route: readonly StationCode[];
  /** In the order of filming, as far as `hasOrder`; clips without order may stand anywhere. */
  readonly clips: readonly PlacedClip[];
  /** Which of several takes filmed at one go counts. */
  readonly retake: Plan['retake'];
}

/** A squad's walk, made ready for being explained. */
export interface Walk {
  readonly route: readonly StationCode[];
  readonly retake: Plan['retake'];
  /** In the order given. */
  readonly clips: readonly WalkClip[];
  /** Those with an order, in the order of filming. */
  readonly rows: readonly WalkClip[];
  /** Per slot, the clips settled there; a slot without any is open to guesses and wrong places. */
  readonly takes: readonly (readonly WalkClip[])[];
  readonly timetable: Timetable;
}

/** Settles what cards and the teacher say, and reads the squad's pace from it. */
export function buildWalk({ route, clips, retake }: Omit<SquadClips, 'squad'>): Walk {
  let row = 0;
  const walkClips = clips.map((placed): WalkClip => {
    const station = placed.observation.known ? placed.observation.station : null;
    const byHand = findTeacherSlot(placed, route);
    const bySign = station === null ? -1 : route.indexOf(station);
    const ownSlot = byHand ?? (bySign < 0 ? null : bySign);
    const ownRow = placed.hasOrder ? row++ : null;
    return { placed, row: ownRow, station, ownSlot, slotIsFinal: byHand !== null };
  });
  const rows = walkClips.filter((clip) => clip.row !== null);
  const takes = route.map((_, slot) => walkClips.filter((clip) => clip.ownSlot === slot));
  return { route, retake, clips: walkClips, rows, takes, timetable: buildTimetable(rows, takes) };
}

/** A slot the route does not have (the plan was changed since) is no slot. */
function findTeacherSlot(placed: PlacedClip, route: readonly StationCode[]): SlotIndex | null {
  const slot = placed.slotByTeacher;
  return slot !== null && route[slot] !== undefined ? slot : null;
}

/** True where nothing is settled for the slot, so that a guess or a wrong place may fill it. */
export function isOpen(walk: Walk, slot: SlotIndex): boolean {
  return walk.takes[slot]?.length === 0;
}
