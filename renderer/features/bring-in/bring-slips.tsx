import type { StepProps } from '../../client/steps.ts';
import { FolderPicker } from '../../ui/folder-picker.tsx';
import { TabletClockSlip } from '../../ui/tablet-clock-slip.tsx';
import type { Bring } from './use-bring.ts';
import { findShift, type WaitingItem } from './waiting.ts';

/** What is asked on the sheet at the moment: a folder, or a tablet's clock. */
export function BringSlips({
  props,
  ways,
  waiting,
  clockOf,
  onClockClose,
}: {
  readonly props: StepProps;
  readonly ways: Bring;
  readonly waiting: readonly WaitingItem[];
  /** The squad whose clock is asked for; null: none. */
  readonly clockOf: string | null;
  readonly onClockClose: () => void;
}) {
  const { desk, lesson, names } = props;
  const { picking } = ways;
  const squad = lesson.squads.find(({ code }) => code === clockOf);
  return (
    <>
      {picking && (
        <FolderPicker
          client={desk.client}
          wants="any"
          onChoose={(folder) => ways.take(picking, [folder])}
          onClose={ways.closePicker}
        />
      )}
      {squad && (
        <TabletClockSlip
          squad={squad}
          name={names.squad(squad.code)}
          shiftSeconds={findShift(waiting, squad.code)}
          onDecide={desk.decide}
          onClose={onClockClose}
        />
      )}
    </>
  );
}
