import { useEffect, useRef, useState } from 'react';
import { Slider, SliderThumb, SliderTrack } from 'react-aria-components';
import { REVIEW } from '../../text/english/review.ts';
import type { EvidenceDrawing } from './evidence-drawing.ts';

/** Width to height of the frame that every film is shown in. */
export const FRAME_ASPECT = 16 / 9;

/** What is numbered in the picture. */
export interface NumberedLanes extends Pick<EvidenceDrawing, 'lanes' | 'areLanesGiven'> {
  /** Takes the places that the teacher has moved them to, left to right; null: they stay where they are. */
  readonly onMove: ((places: readonly number[]) => void) | null;
}

/** The number of each performer at the foot of the picture, as the count sheet has them. */
export function LaneNumbers({ lanes, aspect, ...rest }: NumberedLanes & { readonly aspect: number }) {
  if (lanes.length === 0) return null;
  // A film narrower than the frame stands in its middle.
  const share = Math.min(1, aspect / FRAME_ASPECT);
  const style = { left: `${50 * (1 - share)}%`, width: `${100 * share}%` };
  const { onMove, areLanesGiven } = rest;
  if (onMove) {
    return <MovableNumbers key={lanes.length} {...{ lanes, areLanesGiven, onMove, style }} />;
  }
  return (
    <div className="lane-nos" style={style} aria-hidden="true">
      {lanes.map(({ x, isOff }, at) => (
        <span
          // biome-ignore lint/suspicious/noArrayIndexKey: lanes are known by their place
          key={at}
          className={getLook(areLanesGiven, isOff)}
          style={{ '--x': `${x * 100}%` } as React.CSSProperties}
        >
          {at + 1}
        </span>
      ))}
    </div>
  );
}

function getLook(areGiven: boolean, isOff: boolean): string {
  return `lane-no ${areGiven ? '' : 'pencilled'} ${isOff ? 'off' : ''}`;
}

/** How long a number must have come to rest to be decided: several steps of an arrow key are one word. */
const AT_REST_MS = 400;

/** The same, to be dragged onto the performers or moved by arrow keys. */
function MovableNumbers({
  lanes,
  areLanesGiven,
  onMove,
  style,
}: NumberedLanes & {
  readonly onMove: (places: readonly number[]) => void;
  readonly style: React.CSSProperties;
}) {
  const [moved, setMoved] = useState<number[] | null>(null);
  const { rest, cancel } = useRest(onMove);
  const measured = lanes.map(({ x }) => x).join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: measured anew, they stand where they were put
  useEffect(() => setMoved(null), [measured]);
  return (
    <Slider
      className="lane-nos"
      style={style}
      aria-label={REVIEW.performerPlaces}
      minValue={0}
      maxValue={1}
      step={0.01}
      formatOptions={{ style: 'percent' }}
      value={moved ?? lanes.map(({ x }) => x)}
      onChange={(places) => {
        cancel();
        setMoved(places);
      }}
      onChangeEnd={rest}
    >
      <SliderTrack className="lane-track">
        {lanes.map(({ isOff }, at) => (
          <SliderThumb
            // biome-ignore lint/suspicious/noArrayIndexKey: lanes are known by their place
            key={at}
            index={at}
            className={getLook(areLanesGiven || moved !== null, isOff)}
            aria-label={REVIEW.performerPlace(at + 1)}
          >
            {at + 1}
          </SliderThumb>
        ))}
      </SliderTrack>
    </Slider>
  );
}

/** Hands places on once they have come to rest, at once where the picture goes away. */
function useRest(onMove: (places: readonly number[]) => void) {
  const waiting = useRef<{ readonly timer: ReturnType<typeof setTimeout>; readonly run: () => void } | null>(
    null,
  );
  const cancel = () => {
    if (waiting.current) clearTimeout(waiting.current.timer);
    waiting.current = null;
  };
  const rest = (places: readonly number[]) => {
    cancel();
    const run = () => {
      waiting.current = null;
      onMove(places);
    };
    waiting.current = { timer: setTimeout(run, AT_REST_MS), run };
  };
  useEffect(
    () => () => {
      if (!waiting.current) return;
      clearTimeout(waiting.current.timer);
      waiting.current.run();
    },
    [],
  );
  return { rest, cancel };
}
