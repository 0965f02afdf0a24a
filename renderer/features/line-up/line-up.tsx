import './line-up.css';
import './loom.css';
import './ticket.css';
import { useMemo, useState } from 'react';
import { readMoveTarget } from '../../client/move-target.ts';
import type { StepProps } from '../../client/steps.ts';
import { buildPlaces } from './by-place.ts';
import { findChosen } from './chosen.ts';
import { buildClockAxis } from './clock-axis.ts';
import { FlagSide } from './flag-side.tsx';
import { LineUpHead } from './line-up-head.tsx';
import { LineUpSlips } from './line-up-slips.tsx';
import { buildLoom } from './loom.ts';
import { Loom } from './loom-view.tsx';
import { findMeetings } from './meetings.ts';
import { PlaceLoom } from './place-loom.tsx';
import { focusTicket, type OpenSlip, useLineUpKeys } from './use-line-up-keys.ts';
import { useZoom } from './use-zoom.ts';

/** Routes and clips on one clock: threads from slot to clip, flags with their evidence, and the ways to put it right. */
export function LineUp(given: StepProps) {
  const moving = readMoveTarget(given.target);
  const props = moving === null ? given : { ...given, target: moving };
  const { lesson, names, target, go, desk } = props;
  const { plan, clips, flags, reading } = lesson;
  const [layout, setLayout] = useState<'squad' | 'place'>('squad');
  const [slip, setSlip] = useState<OpenSlip | null>(moving === null ? null : { kind: 'move' });
  const axis = useMemo(() => buildClockAxis({ plan, clips }), [plan, clips]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only these parts of the lesson stand on the loom.
  const columns = useMemo(() => buildLoom(lesson, axis), [plan, clips, flags, reading, axis]);
  const meetings = useMemo(() => findMeetings(columns), [columns]);
  const places = useMemo(() => buildPlaces({ plan }, columns, axis), [plan, columns, axis]);
  const chosen = findChosen(lesson, columns, target);
  const zoom = useZoom(axis, layout);
  useLineUpKeys({ props, columns, chosen, zoom, layout, setLayout, setSlip });
  const choose = useMemo(() => (clip: string) => go('line-up', clip), [go]);
  const close = () => {
    setSlip(null);
    if (moving === null) return;
    // It was come to from another screen, so there is nothing that the focus could go back to.
    go('line-up', moving);
    focusTicket(moving);
  };
  const loom = { axis, names, zoom, onChoose: choose, chosen: chosen.clip?.id ?? null };
  return (
    <>
      <LineUpHead {...{ lesson, layout, zoom, axis }} onLayout={setLayout} />
      {layout === 'squad' ? (
        <Loom
          {...loom}
          {...{ columns, meetings, lesson }}
          onClock={(squad) => setSlip({ kind: 'clock', squad })}
          onMove={desk.decide}
        />
      ) : (
        <PlaceLoom {...loom} places={places} />
      )}
      <div className="side-column">
        <LineUpSlips {...{ props, slip, chosen }} onClose={close} />
        <FlagSide {...{ props, chosen }} onSlip={setSlip} />
      </div>
    </>
  );
}
