import type { StepProps } from '../../client/steps.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { explainStamp } from '../../text/english/stamps.ts';
import { Button } from '../../ui/button.tsx';
import { ClipStill } from '../../ui/clip-still.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import type { Ticket } from './loom.ts';
import type { OpenSlip } from './use-line-up-keys.ts';

/** The chosen clip without a flag: how its station and time are known, and the ways to say otherwise. */
export function TicketNote({
  props,
  ticket,
  onSlip,
}: {
  readonly props: StepProps;
  readonly ticket: Ticket;
  readonly onSlip: (slip: OpenSlip) => void;
}) {
  const { names, lesson, deskView } = props;
  const { clip, squad, station, startMs } = ticket;
  const from = clip.assignment?.stationFrom ?? 'nothing';
  const doubt = clip.time?.uncertaintySeconds ?? Number.POSITIVE_INFINITY;
  return (
    <section className="slip ticket-note" aria-label={names.clip(clip.id)}>
      <h3>
        <SquadMark squad={squad} /> {LINE_UP.ticketHead(station && names.station(station))}
      </h3>
      <div className="ev one">
        <ClipStill
          lesson={lesson.lesson}
          clip={clip}
          name={LINE_UP.evidence(names.squad(squad), station ?? LINE_UP.unknownStation, '')}
          isThere={deskView.hasFfmpeg}
        />
        <p className="cap">
          {names.clip(clip.id)}
          <br />
          {startMs === null ? LINE_UP.noTime : names.times.second(startMs)}
        </p>
      </div>
      <p>
        {clip.isSearched ? LINE_UP.stationFrom[from] : LINE_UP.notSearched} {explainStamp(clip.stamp)}{' '}
        {ticket.isDoubtful && LINE_UP.doubtful(doubt)}
      </p>
      <div className="rem">
        <Button keyId="choose-station" onPress={() => onSlip({ kind: 'station' })}>
          {LINE_UP.chooseStation}
        </Button>
        <Button keyId="move-clip" onPress={() => onSlip({ kind: 'move' })}>
          {LINE_UP.move}
        </Button>
      </div>
    </section>
  );
}
