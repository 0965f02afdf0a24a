import type { ClipView, FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { Plan, SquadCode } from '../../../src-core/lesson/plan.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { Flag } from '../../../src-core/matching/flag.ts';
import { listOpenFlags } from '../../client/flag-step.ts';

/** One press that settles what waits; the first of a list is the inked one. */
export type Remedy =
  | { readonly kind: 'whose'; readonly squad: SquadCode; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'leave-out'; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'take-in'; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'stays-with'; readonly squad: SquadCode; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'place-is-right'; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'use-shift'; readonly seconds: number; readonly acts: readonly JournalAct[] }
  | { readonly kind: 'leave-in-doubt'; readonly acts: readonly JournalAct[] }
  /** Opens the tablet's clock. */
  | { readonly kind: 'set-clock'; readonly squad: SquadCode }
  /** Opens the clip at Line up, to choose its slot. */
  | { readonly kind: 'choose-slot'; readonly clip: string };

/** A clip or tablet that waits for the teacher, with all that settles it. */
export interface WaitingItem {
  /** The flag's key, or `nobodys:` and the clip's id. */
  readonly key: string;
  /** Null: no flag, a clip that nobody's folder names. */
  readonly flag: FlagView | null;
  readonly clip: ClipView | null;
  readonly remedies: readonly Remedy[];
}

/** Everything that waits at Bring in, flags first. */
export function listWaiting(view: LessonView): readonly WaitingItem[] {
  const clips = new Map(view.clips.map((clip) => [clip.id, clip]));
  const flagged = listOpenFlags(view, 'bring-in').map((entry): WaitingItem => {
    const clip = entry.flag.clip === null ? null : (clips.get(entry.flag.clip) ?? null);
    return { key: entry.key, flag: entry, clip, remedies: listRemedies(entry, clip) };
  });
  const named = new Set(flagged.map(({ clip }) => clip?.id));
  const nobodys = view.clips
    .filter(({ aside, id }) => aside === 'nobodys' && !named.has(id))
    .map(
      (clip): WaitingItem => ({
        key: `nobodys:${clip.id}`,
        flag: null,
        clip,
        remedies: listOwners(view.plan, clip.id),
      }),
    );
  return [...flagged, ...nobodys];
}

function listOwners(plan: Plan, clip: string): readonly Remedy[] {
  return [
    ...plan.squads.map(
      ({ code }): Remedy => ({
        kind: 'whose',
        squad: code,
        acts: [{ kind: 'clip-moved', clip, squad: code }],
      }),
    ),
    { kind: 'leave-out', acts: [{ kind: 'clip-placed', clip, slot: 'none' }] },
  ];
}

function listRemedies({ key, flag }: FlagView, clip: ClipView | null): readonly Remedy[] {
  const settle = (settled: 'kept' | 'cleared'): readonly JournalAct[] => [
    { kind: 'flag-settled', flag: key, settled, reason: null },
  ];
  switch (flag.code) {
    case 'handed-in-twice':
      return listTwiceRemedies(flag, clip, settle('kept'));
    case 'other-squad':
      return [
        {
          kind: 'whose',
          squad: flag.likely,
          acts: [{ kind: 'clip-moved', clip: flag.clip, squad: flag.likely }],
        },
        { kind: 'stays-with', squad: flag.squad, acts: settle('cleared') },
      ];
    case 'unreadable':
      return [{ kind: 'leave-out', acts: settle('kept') }];
    case 'outside-period':
      return [
        { kind: 'leave-out', acts: settle('kept') },
        { kind: 'take-in', acts: settle('cleared') },
      ];
    case 'clock-doubtful':
      return listClockRemedies(flag, settle);
    default:
      return [{ kind: 'leave-out', acts: settle('kept') }];
  }
}

function listTwiceRemedies(
  flag: Extract<Flag, { code: 'handed-in-twice' }>,
  clip: ClipView | null,
  keep: readonly JournalAct[],
): readonly Remedy[] {
  const owner = clip?.squad ?? null;
  const others = [flag.squad, ...flag.alsoIn].filter((squad) => squad !== owner);
  const moved = others.map(
    (squad): Remedy => ({
      kind: 'whose',
      squad,
      acts: [{ kind: 'clip-moved', clip: flag.clip, squad }],
    }),
  );
  return owner === null ? moved : [{ kind: 'whose', squad: owner, acts: keep }, ...moved];
}

function listClockRemedies(
  flag: Extract<Flag, { code: 'clock-doubtful' }>,
  settle: (settled: 'kept' | 'cleared') => readonly JournalAct[],
): readonly Remedy[] {
  const { clip, squad, shiftSeconds } = flag;
  if (clip !== null) {
    return [
      { kind: 'place-is-right', acts: settle('cleared') },
      { kind: 'choose-slot', clip },
      { kind: 'leave-out', acts: [{ kind: 'clip-placed', clip, slot: 'none' }] },
    ];
  }
  const shift: readonly Remedy[] =
    shiftSeconds === null
      ? []
      : [
          {
            kind: 'use-shift',
            seconds: shiftSeconds,
            acts: [{ kind: 'clock-set', squad, correctionSeconds: shiftSeconds }],
          },
        ];
  return [...shift, { kind: 'set-clock', squad }, { kind: 'leave-in-doubt', acts: settle('kept') }];
}

/** The item after the one asked for, round and round; the first where none is. Null: nothing waits. */
export function findNextWaiting(waiting: readonly WaitingItem[], target: string | null): WaitingItem | null {
  const at = waiting.findIndex(({ key }) => key === target);
  return waiting[(at + 1) % Math.max(1, waiting.length)] ?? null;
}

/** A correction of a tablet's clock, in seconds, that a waiting flag proposes; null: none. */
export function findShift(waiting: readonly WaitingItem[], squad: SquadCode): number | null {
  for (const { flag } of waiting) {
    if (flag?.flag.code === 'clock-doubtful' && flag.flag.squad === squad) return flag.flag.shiftSeconds;
  }
  return null;
}
