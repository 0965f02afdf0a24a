import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { StationCode } from '../../../src-core/lesson/plan.ts';

/** A station that a clip may have been filmed at, and a clip that is known to show it. */
export interface LookAlike {
  readonly station: StationCode;
  readonly place: string;
  /** Filmed there for sure, by a card or the teacher's word; null: no such clip. */
  readonly shows: ClipView | null;
  /** What the clip is taken for now. */
  readonly isNow: boolean;
  /** The station's card was read in the clip. */
  readonly isOnCard: boolean;
}

/** Every station with a picture to compare by; what speaks for one comes first, otherwise the plan's order. */
export function listLookAlikes({ plan, clips }: LessonView, clip: ClipView): readonly LookAlike[] {
  const alike = plan.stations.map(({ code, place }): LookAlike => {
    const sure = clips.filter(
      ({ id, assignment, holds }) =>
        id !== clip.id &&
        holds === 'video' &&
        assignment?.station === code &&
        assignment.stationFrom !== 'inferred',
    );
    return {
      station: code,
      place,
      // A card hides half the picture, so the teacher's own word shows the place better.
      shows: sure.find(({ word }) => word.station === code) ?? sure[0] ?? null,
      isNow: clip.assignment?.station === code,
      isOnCard: clip.card?.code === code,
    };
  });
  const weight = ({ isNow, isOnCard }: LookAlike) => Number(isNow) + 2 * Number(isOnCard);
  return alike.toSorted((one, other) => weight(other) - weight(one));
}
