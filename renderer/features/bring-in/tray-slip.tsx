import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { span } from '../../text/english/amounts.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import type { TraySlip } from './trays.ts';

/** One slip of a tray: inked when its station is known, pencilled when it is a guess, hatched while being read. */
export function TraySlipItem({ slip, names }: { readonly slip: TraySlip; readonly names: LessonNames }) {
  switch (slip.kind) {
    case 'clip':
      return (
        <li className={`sp ${slip.isGuess ? 'gs' : ''}`}>
          <span className="vh">{BRING_IN.slipClip(slip.slot, slip.station, slip.isGuess)}</span>
          <b aria-hidden="true">{slip.station}</b>
          <ClipFacts clip={slip.clip} names={names} />
        </li>
      );
    case 'reading':
      return (
        <li className="sp rd">
          <span className="vh">{BRING_IN.slipReading(slip.slot)}</span>
          <b aria-hidden="true">·</b>
          <ClipFacts clip={slip.clip} names={names} />
        </li>
      );
    case 'gap':
      return (
        <li className={`sp gap ${slip.isShort ? 'short' : ''}`}>
          <span className="vh">{BRING_IN.slipGap(slip.slot)}</span>
          <b aria-hidden="true">{slip.slot + 1}</b>
        </li>
      );
    case 'extra':
      return (
        <li className="sp ex">
          <span className="vh">{BRING_IN.slipExtra}</span>
          <b aria-hidden="true">+</b>
          <ClipFacts clip={slip.clip} names={names} />
        </li>
      );
  }
}

function ClipFacts({ clip, names }: { readonly clip: ClipView; readonly names: LessonNames }) {
  const startMs = clip.time?.startMs ?? null;
  return (
    <>
      <small>{startMs === null ? BRING_IN.noTime : names.times.minute(startMs)}</small>
      {clip.durationSeconds !== null && <small>{span(Math.round(clip.durationSeconds))}</small>}
    </>
  );
}
