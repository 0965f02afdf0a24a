import type { GivenLanes } from '../../../src-core/evidence/unison-finding.ts';
import { countGivenLanes, MOST_LANES } from '../../../src-core/marking/given-lanes.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { KeyCap } from '../../ui/key-cap.tsx';

const COUNTS = Array.from({ length: MOST_LANES }, (_, at) => at + 1);

/** The performers of a clip as they stand, and how the teacher says otherwise. */
export interface Performers {
  /** The teacher's word; null: as estimated. */
  readonly given: GivenLanes | null;
  /** Null: lanes could not be told apart. */
  readonly estimated: number | null;
  readonly onSet: (lanes: GivenLanes | null) => void;
}

/** How many performers there are: the machine's number pencilled, the teacher's inked. Unison is measured by it. */
export function PerformersLine({ given, estimated, onSet }: Performers) {
  const decided = given === null ? null : countGivenLanes(given);
  return (
    <div className="performers">
      <span className="name" aria-hidden="true">
        {REVIEW.performers}
      </span>
      <fieldset className="pick" aria-label={REVIEW.performersLabel}>
        {COUNTS.map((count) => {
          const isProposed = decided === null && count === estimated;
          return (
            <button
              key={count}
              type="button"
              className={`btn ${isProposed ? 'prop' : ''}`}
              aria-pressed={count === decided}
              aria-label={`${REVIEW.performerCount(count)}${isProposed ? REVIEW.byMachine : ''}`}
              onClick={() => onSet(count)}
            >
              {count}
            </button>
          );
        })}
      </fieldset>
      {decided === null ? (
        <span className="cap">
          <KeyCap id="lane-less" /> <KeyCap id="lane-more" />
        </span>
      ) : (
        <Button look="bare" onPress={() => onSet(null)}>
          {REVIEW.estimateAgain}
        </Button>
      )}
    </div>
  );
}
