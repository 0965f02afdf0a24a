import { areRoutesKnown, getFlagStep, isOpen, listOpenFlags } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Button } from '../../ui/button.tsx';
import { KeyCap } from '../../ui/key-cap.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import type { Chosen } from './chosen.ts';
import { FlagSlip } from './flag-slip.tsx';
import { SettledFlags } from './settled-flags.tsx';
import { TicketNote } from './ticket-note.tsx';
import type { OpenSlip } from './use-line-up-keys.ts';

/** One slip for each flag; the chosen one shows its evidence and remedies. */
export function FlagSide({
  props,
  chosen,
  onSlip,
}: {
  readonly props: StepProps;
  readonly chosen: Chosen;
  readonly onSlip: (slip: OpenSlip) => void;
}) {
  const { lesson, go, target } = props;
  const isKnown = areRoutesKnown(lesson);
  const open = listOpenFlags(lesson, 'line-up');
  const elsewhere = listOpenFlags(lesson, 'bring-in').length;
  const settled = lesson.flags.filter(
    (entry) => getFlagStep(entry.flag.code) === 'line-up' && !isOpen(entry) && entry.answer !== null,
  );
  const isNoted =
    chosen.clip !== null && target === chosen.clip.id && !open.some(({ key }) => key === chosen.flag?.key);
  return (
    <Sheet label={LINE_UP.side} className="side">
      <header>
        <h2>{LINE_UP.flags(open.length)}</h2>
        <span className="cap">
          {LINE_UP.ofClips(lesson.clips.filter(({ aside }) => aside === null).length)}
        </span>
        {open.length > 0 && (
          <span className="push cap">
            {LINE_UP.next} <KeyCap id="next-flag" />
          </span>
        )}
      </header>
      <div className="side-body">
        {isNoted && chosen.ticket && <TicketNote props={props} ticket={chosen.ticket} onSlip={onSlip} />}
        <ol>
          {open.map((entry) => (
            <FlagSlip
              key={entry.key}
              entry={entry}
              props={props}
              isChosen={entry.key === chosen.flag?.key}
              onSlip={onSlip}
            />
          ))}
        </ol>
        {!isKnown && <p className="pen soon">{lesson.clips.length === 0 ? LINE_UP.noClips : LINE_UP.soon}</p>}
        {open.length === 0 && isKnown && (
          <div className="calm">
            <p className="read">{LINE_UP.calm}</p>
            <Button look="ink" onPress={() => go('review')}>
              {LINE_UP.toReview}
            </Button>
          </div>
        )}
      </div>
      {elsewhere > 0 && (
        <button type="button" className="lk elsewhere" onClick={() => go('bring-in')}>
          {LINE_UP.toBringIn(elsewhere)}
        </button>
      )}
      <SettledFlags settled={settled} props={props} />
    </Sheet>
  );
}
