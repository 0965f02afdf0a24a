import type { SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Flag } from './flag.ts';
import type { ClipId } from './observation.ts';
import { hasReturned } from './reading.ts';
import type { SettledClip } from './settle-clips.ts';
import type { Walk } from './walk.ts';
import type { WalkClip } from './walk-clip.ts';

/** A squad's clips after matching, ready for being flagged. */
export interface SettledSquad {
  readonly squad: SquadCode;
  readonly walk: Walk;
  /** One per clip, in the order given. */
  readonly settled: readonly SettledClip[];
  readonly outOfOrder: ReadonlySet<WalkClip>;
  readonly missing: readonly SlotIndex[];
}

/**
 * The flags that matching raises: out of order, retake, wrong place, extra, unplaced per clip, then missing per
 * slot. One flag per fact: a slot whose time a wrong-place clip fills is not missing besides.
 */
export function raiseFlags(match: SettledSquad): Flag[] {
  return [
    ...match.settled.flatMap((one) => flagClip(match, one) ?? []),
    ...match.missing.map((slot) => flagMissing(match, slot)),
  ];
}

function flagClip(match: SettledSquad, one: SettledClip): Flag | null {
  const { squad } = match;
  const { clip: id, observation } = one.clip.placed;
  const station = observation.known ? observation.station : null;
  switch (one.role) {
    case 'counts':
      return match.outOfOrder.has(one.clip) ? flagOutOfOrder(match, one) : null;
    case 'retake':
      return flagRetake(match, one);
    case 'wrong-place': {
      const expected = getStation(match, one.slot);
      return {
        squad,
        code: 'wrong-place',
        clip: id,
        slot: one.slot ?? 0,
        expected,
        station: station ?? expected,
      };
    }
    case 'extra':
      return { squad, code: 'extra', clip: id, station };
    case 'unplaced':
      return { squad, code: 'unplaced', clip: id, either: one.either };
  }
}

function flagRetake(match: SettledSquad, one: SettledClip): Flag | null {
  const counting = match.settled.find(({ role, slot }) => role === 'counts' && slot === one.slot);
  if (counting === undefined) return null;
  return {
    squad: match.squad,
    code: 'retake',
    clip: one.clip.placed.clip,
    slot: one.slot ?? 0,
    counts: counting.clip.placed.clip,
    returned: hasReturned(match.walk, one.slot, [one.clip, counting.clip]),
  };
}

function flagOutOfOrder(match: SettledSquad, one: SettledClip): Flag | null {
  const against = findContradicted(match, one);
  if (against === null) return null;
  const slot = one.slot ?? 0;
  const { squad } = match;
  return {
    squad,
    code: 'out-of-order',
    clip: one.clip.placed.clip,
    slot,
    station: getStation(match, slot),
    against,
  };
}

/** The in-order clip nearest by clips in between (the earlier of two) that lies on the wrong side. */
function findContradicted(
  { settled, outOfOrder }: SettledSquad,
  one: SettledClip,
): { clip: ClipId; slot: SlotIndex; side: 'before' | 'after' } | null {
  const row = one.clip.row ?? 0;
  const slot = one.slot ?? 0;
  const contradicted = settled.flatMap((other) => {
    const otherRow = other.clip.row;
    if (other.role !== 'counts' || other.slot === null || otherRow === null) return [];
    if (outOfOrder.has(other.clip) || row < otherRow === slot < other.slot) return [];
    const side: 'before' | 'after' = row < otherRow ? 'before' : 'after';
    return [{ distance: Math.abs(otherRow - row), clip: other.clip.placed.clip, slot: other.slot, side }];
  });
  const [nearest] = contradicted.toSorted((first, second) => first.distance - second.distance);
  return nearest === undefined ? null : { clip: nearest.clip, slot: nearest.slot, side: nearest.side };
}

function flagMissing({ squad, walk, settled }: SettledSquad, slot: SlotIndex): Flag {
  const candidates = settled
    .filter(({ role, either }) => role === 'unplaced' && either.some((choice) => choice.slot === slot))
    .map(({ clip }) => clip.placed.clip);
  return { squad, code: 'missing', clip: null, slot, station: walk.route[slot] ?? '', candidates };
}

function getStation({ walk }: SettledSquad, slot: SlotIndex | null): StationCode {
  return slot === null ? '' : (walk.route[slot] ?? '');
}
