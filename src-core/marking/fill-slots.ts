import type { Squad } from '../lesson/plan.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import type { Flag, FlagKey } from '../matching/flag.ts';
import type { EpochMs } from '../platform/units.ts';
import type { FlagRef, SlotResult, SquadResult } from './score-input.ts';

/** A clip on its squad's route. */
export interface WalkedClip {
  readonly assignment: ClipAssignment;
  readonly time: {
    /** Corrected start; null where only the order is known. */
    readonly startMs: EpochMs | null;
    /** What orders it among the squad's clips. */
    readonly by: 'date' | 'number' | 'none';
  };
}

/** A flag under the key that it is answered by. */
export interface KeyedFlag {
  readonly key: FlagKey;
  readonly flag: Flag;
  /** False: a notice that asks nothing of the teacher and holds nothing up. */
  readonly asks: boolean;
}

/** A squad's route with the clips that fill its slots: the one that counts, or that stands in a slot's time. */
export function fillSlots(
  { code, route }: Pick<Squad, 'code' | 'route'>,
  /** In the order of filming. */
  clips: readonly WalkedClip[],
  flags: readonly KeyedFlag[],
): SquadResult {
  const slots = route.map((station, slot): SlotResult => {
    const position = clips.findIndex(({ assignment }) => fillsSlot(assignment, slot));
    const clip = clips[position];
    if (!clip) return { slot, station, clip: null, startMs: null, position: null, orderFlag: null };
    const { assignment, time } = clip;
    const order = flags.find(({ flag }) => flag.code === 'out-of-order' && flag.clip === assignment.clip);
    return {
      slot,
      station,
      clip: assignment.clip,
      startMs: time.startMs,
      position: time.by !== 'none' && assignment.role === 'counts' ? position : null,
      orderFlag: order?.key ?? null,
    };
  });
  return { squad: code, slots };
}

function fillsSlot({ slot, role }: ClipAssignment, wanted: number): boolean {
  return slot === wanted && (role === 'counts' || role === 'wrong-place');
}

/** What marks depend on of the flags that ask something. */
export function listFlagRefs(flags: readonly KeyedFlag[]): readonly FlagRef[] {
  return flags
    .filter(({ asks }) => asks)
    .map(({ key, flag }) => ({
      key,
      squad: flag.squad,
      clip: flag.clip,
      slot: 'slot' in flag ? flag.slot : null,
    }));
}
