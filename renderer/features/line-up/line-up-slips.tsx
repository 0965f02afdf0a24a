import type { StepProps } from '../../client/steps.ts';
import { TabletClockSlip } from '../../ui/tablet-clock-slip.tsx';
import type { Chosen } from './chosen.ts';
import { MoveSlip } from './move-slip.tsx';
import { StationSlip } from './station-slip.tsx';
import type { OpenSlip } from './use-line-up-keys.ts';

/** The question that lies on the sheet, if any: where a clip goes, where it was filmed, or a tablet's clock. */
export function LineUpSlips({
  props,
  slip,
  chosen,
  onClose,
}: {
  readonly props: StepProps;
  readonly slip: OpenSlip | null;
  readonly chosen: Chosen;
  readonly onClose: () => void;
}) {
  const { lesson, names, desk } = props;
  if (!slip) return null;
  if (slip.kind === 'clock') {
    const squad = lesson.squads.find(({ code }) => code === slip.squad);
    if (!squad) return null;
    return (
      <TabletClockSlip
        squad={squad}
        name={names.squad(squad.code)}
        shiftSeconds={null}
        onDecide={desk.decide}
        onClose={onClose}
      />
    );
  }
  if (!chosen.clip) return null;
  const Slip = slip.kind === 'move' ? MoveSlip : StationSlip;
  return <Slip key={chosen.clip.id} clip={chosen.clip} props={props} onClose={onClose} />;
}
