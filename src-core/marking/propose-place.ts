import type { LookAlike } from '../evidence/find-look-alike.ts';
import type { StationCode } from '../lesson/plan.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import type { ClipId } from '../matching/observation.ts';
import type { Seconds } from '../platform/units.ts';

/** Why a clip is taken to show the right place, or not; worded by the faces. */
export type PlaceReason =
  | { readonly code: 'card-shows-station'; readonly station: StationCode; readonly atSeconds: Seconds }
  | {
      readonly code: 'card-shows-other';
      readonly station: StationCode;
      readonly expected: StationCode;
      readonly atSeconds: Seconds;
    }
  | { readonly code: 'teacher-named-station'; readonly station: StationCode }
  | { readonly code: 'teacher-named-other'; readonly station: StationCode; readonly expected: StationCode }
  | { readonly code: 'looks-like-clip'; readonly station: StationCode; readonly like: ClipId }
  | {
      readonly code: 'looks-like-other';
      readonly station: StationCode;
      readonly expected: StationCode;
      readonly like: ClipId;
    }
  | { readonly code: 'only-slot-left'; readonly station: StationCode };

/** A suggestion about the place of one clip. */
export interface PlaceProposal {
  readonly met: boolean;
  readonly confidence: number;
  readonly reason: PlaceReason;
}

/** A card read in two frames is as good as certain; the order of a walk only suggests. Judgement, not measured. */
const CONFIDENCE = { known: 0.99, inferred: 0.6 } as const;

/** What a clip shows of its place, beside its assignment. */
export interface PlaceSigns {
  /** When the card is first seen; null where no card was read. */
  readonly cardAtSeconds: Seconds | null;
  /** The labelled clip that it resembles; null where none, or where its station is known anyway. */
  readonly lookAlike: Pick<LookAlike, 'station' | 'like' | 'scores'> | null;
}

/**
 * Whether a clip was filmed at its slot's place: by the card in it, by the teacher's word, by the labelled clip it
 * looks like, or, weakly, because no other slot is left for it. Null: nothing speaks either way.
 *
 * @param expected the slot's station; null where the clip has no slot
 */
export function proposePlace(
  assignment: ClipAssignment,
  expected: StationCode | null,
  { cardAtSeconds, lookAlike }: PlaceSigns,
): PlaceProposal | null {
  const { station, stationFrom } = assignment;
  if (expected === null) return null;
  if (lookAlike && (stationFrom === null || stationFrom === 'inferred')) {
    return proposeByLook(lookAlike, expected);
  }
  if (station === null || stationFrom === null) return null;
  if (stationFrom === 'inferred') {
    return { met: true, confidence: CONFIDENCE.inferred, reason: { code: 'only-slot-left', station } };
  }
  const met = station === expected;
  const atSeconds = cardAtSeconds ?? 0;
  const byCard = met
    ? ({ code: 'card-shows-station', station, atSeconds } as const)
    : ({ code: 'card-shows-other', station, expected, atSeconds } as const);
  const byTeacher = met
    ? ({ code: 'teacher-named-station', station } as const)
    : ({ code: 'teacher-named-other', station, expected } as const);
  return { met, confidence: CONFIDENCE.known, reason: stationFrom === 'card' ? byCard : byTeacher };
}

function proposeByLook(
  { station, like, scores }: Pick<LookAlike, 'station' | 'like' | 'scores'>,
  expected: StationCode,
): PlaceProposal {
  const confidence = scores[station] ?? CONFIDENCE.inferred;
  if (station === expected)
    return { met: true, confidence, reason: { code: 'looks-like-clip', station, like } };
  return { met: false, confidence, reason: { code: 'looks-like-other', station, expected, like } };
}
