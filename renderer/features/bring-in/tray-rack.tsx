import { memo } from 'react';
import type { LessonNames } from '../../client/lesson-names.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { SquadMark } from '../../ui/squads.tsx';
import { TraySlipItem } from './tray-slip.tsx';
import type { Tray } from './trays.ts';

/** Trays that stand beside each other on a wide desk: one row of up to three, else two rows, four abreast at most. */
function countBeside(trays: number): number {
  return trays <= 3 ? Math.max(1, trays) : Math.min(4, Math.ceil(trays / 2));
}

/** From here on slips stand in rows, without their times. */
const MANY_SLOTS = 12;

/** The rack: open trays seen from the front, one slip standing up per slot. */
export const TrayRack = memo(function TrayRack({
  trays,
  names,
  isBusy,
  onClock,
}: {
  readonly trays: readonly Tray[];
  readonly names: LessonNames;
  readonly isBusy: boolean;
  readonly onClock: (squad: string) => void;
}) {
  return (
    <ol
      className="rack"
      aria-label={BRING_IN.trays}
      style={{ '--beside': countBeside(trays.length) } as React.CSSProperties}
    >
      {trays.map((tray) => (
        <li
          key={tray.squad}
          className={`tray ${tray.slots > MANY_SLOTS ? 'many' : ''}`}
          data-squad={tray.squad}
          aria-label={BRING_IN.trayName(names.squad(tray.squad), tray.filled, tray.slots)}
        >
          <div className="hd">
            <SquadMark squad={tray.squad} />
            <TrayCount tray={tray} isBusy={isBusy} />
          </div>
          <ol className="slips">
            {tray.slips.map((slip) => (
              <TraySlipItem
                key={slip.kind === 'gap' ? `gap-${slip.slot}` : slip.clip.id}
                slip={slip}
                names={names}
              />
            ))}
          </ol>
          <Lip tray={tray} isBusy={isBusy} onClock={onClock} />
        </li>
      ))}
    </ol>
  );
});

function TrayCount({ tray, isBusy }: { readonly tray: Tray; readonly isBusy: boolean }) {
  if (tray.isEmpty) return <span className="cap">{isBusy ? BRING_IN.readingStamps : BRING_IN.noClips}</span>;
  if (tray.clips <= tray.slots) {
    return <span className="cap num">{BRING_IN.filled(tray.filled, tray.slots)}</span>;
  }
  const { clips, slots } = BRING_IN.moreThan(tray.clips, tray.slots);
  return (
    <span className="cap num">
      {clips} <small>{slots}</small>
    </span>
  );
}

function Lip({
  tray,
  isBusy,
  onClock,
}: {
  readonly tray: Tray;
  readonly isBusy: boolean;
  readonly onClock: (squad: string) => void;
}) {
  const missing = tray.slips.filter((slip) => slip.kind === 'gap' && slip.isShort).length;
  return (
    <div className="lip">
      <span>{tray.tablet}</span>
      {!tray.isEmpty && (
        <button type="button" className="lk" onClick={() => onClock(tray.squad)}>
          {describeClock(tray)}
        </button>
      )}
      {missing > 0 && !isBusy && <b className="need">{BRING_IN.missing(missing)}</b>}
      <span className="push num">{tray.isEmpty ? BRING_IN.dropHere : BRING_IN.size(tray.bytes)}</span>
    </div>
  );
}

function describeClock({ clock }: Tray): string {
  if (clock.from === 'nothing') return BRING_IN.clockNotFilmed(clock.uncertaintySeconds);
  return clock.from === 'teacher'
    ? BRING_IN.clockByTeacher(clock.offsetSeconds)
    : BRING_IN.clock(clock.offsetSeconds);
}
