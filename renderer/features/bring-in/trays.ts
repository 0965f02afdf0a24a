import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SlotIndex, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';

/** What stands in a tray: one slip a slot, and what the route has no slot for. */
export type TraySlip =
  | {
      readonly kind: 'clip';
      readonly clip: ClipView;
      readonly slot: SlotIndex;
      readonly station: StationCode;
      /** The machine inferred the station; no card and no teacher said it. */
      readonly isGuess: boolean;
    }
  /** A clip whose pictures are still to be searched. */
  | { readonly kind: 'reading'; readonly clip: ClipView; readonly slot: SlotIndex | null }
  /** `isShort`: everything was read, and no clip is there. */
  | { readonly kind: 'gap'; readonly slot: SlotIndex; readonly isShort: boolean }
  /** One more than the route has slots: a retake, an extra, an unplaced clip. */
  | { readonly kind: 'extra'; readonly clip: ClipView };

/** One squad's tray, as it stands in the rack. */
export interface Tray {
  readonly squad: SquadCode;
  readonly tablet: string;
  readonly slips: readonly TraySlip[];
  readonly slots: number;
  /** Slots with a clip. */
  readonly filled: number;
  readonly clips: number;
  readonly bytes: number;
  readonly clock: LessonView['squads'][number]['clock'];
  /** Nothing of the squad is here. */
  readonly isEmpty: boolean;
}

/** The rack of trays, in the plan's order. */
export function buildTrays(view: LessonView): readonly Tray[] {
  const isRead = view.reading.state === 'read';
  return view.plan.squads.map((squad) => {
    const clips = view.clips.filter((clip) => clip.squad === squad.code && clip.aside === null);
    const own = view.clips.filter((clip) => clip.squad === squad.code);
    const slips = buildSlips(squad.route, clips, isRead);
    return {
      squad: squad.code,
      tablet: squad.tablet,
      slips,
      slots: squad.route.length,
      filled: slips.filter((slip) => slip.kind !== 'gap' && slip.kind !== 'extra').length,
      clips: clips.length,
      bytes: own.reduce((sum, { copies }) => sum + (copies[0]?.sizeBytes ?? 0), 0),
      clock: view.squads.find(({ code }) => code === squad.code)?.clock ?? UNKNOWN_CLOCK,
      isEmpty: own.length === 0,
    };
  });
}

const UNKNOWN_CLOCK: Tray['clock'] = {
  offsetSeconds: 0,
  uncertaintySeconds: Number.POSITIVE_INFINITY,
  from: 'nothing',
  contradicting: [],
};

function buildSlips(
  route: readonly StationCode[],
  clips: readonly ClipView[],
  isRead: boolean,
): readonly TraySlip[] {
  const filling = new Map<SlotIndex, ClipView>();
  for (const clip of clips) {
    const { role, slot } = clip.assignment ?? {};
    if ((role === 'counts' || role === 'wrong-place') && slot != null) filling.set(slot, clip);
  }
  const placed = new Set([...filling.values()].map(({ id }) => id));
  const left = clips.filter(({ id }) => !placed.has(id));
  const unsearched = isRead ? [] : left.filter(({ isSearched }) => !isSearched);
  const slips = route.map((due, slot): TraySlip => {
    const clip = filling.get(slot);
    if (!clip) {
      const waiting = unsearched.shift();
      return waiting
        ? { kind: 'reading', clip: waiting, slot }
        : { kind: 'gap', slot, isShort: isRead && clips.length > 0 };
    }
    const station = clip.assignment?.station ?? due;
    return { kind: 'clip', clip, slot, station, isGuess: clip.assignment?.stationFrom === 'inferred' };
  });
  const standing = new Set(slips.flatMap((slip) => ('clip' in slip ? [slip.clip.id] : [])));
  return [
    ...slips,
    ...left
      .filter(({ id }) => !standing.has(id))
      .map(
        (clip): TraySlip =>
          isRead || clip.isSearched ? { kind: 'extra', clip } : { kind: 'reading', clip, slot: null },
      ),
  ];
}
