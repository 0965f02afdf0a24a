import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Button } from '../../ui/button.tsx';
import { ClipStill } from '../../ui/clip-still.tsx';
import { Plate } from '../../ui/marks.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { listLookAlikes } from './look-alikes.ts';
import { nameAskedClip } from './ticket-words.ts';

/** Names the station of a clip, by comparing it with clips whose place is sure. */
export function StationSlip({
  clip,
  props,
  onClose,
}: {
  readonly clip: ClipView;
  readonly props: StepProps;
  readonly onClose: () => void;
}) {
  const { lesson, names, desk, deskView } = props;
  const decide = (station: string | null) => {
    void desk.decide({ kind: 'station-set', clip: clip.id, station });
    onClose();
  };
  return (
    <SlipDialog title={LINE_UP.stationTitle(nameAskedClip(clip, names))} onClose={onClose}>
      <figure className="this-clip">
        <ClipStill lesson={lesson.lesson} clip={clip} name={LINE_UP.thisClip} isThere={deskView.hasFfmpeg} />
        <figcaption className="cap">{LINE_UP.stationHint}</figcaption>
      </figure>
      <ol className="alikes">
        {listLookAlikes(lesson, clip).map(({ station, place, shows, isNow, isOnCard }) => (
          <li key={station}>
            <button type="button" className="alike first" onClick={() => decide(station)}>
              <Plate letter={station} look="open" />
              <span>
                <b>{place}</b>
                <small>
                  {shows ? LINE_UP.knownAt(names.squad(shows.squad ?? '')) : LINE_UP.noneKnown}
                  {isOnCard && `, ${LINE_UP.onCard}`}
                  {isNow && `, ${LINE_UP.now}`}
                </small>
              </span>
              {shows && (
                <ClipStill lesson={lesson.lesson} clip={shows} name="" isThere={deskView.hasFfmpeg} />
              )}
            </button>
          </li>
        ))}
      </ol>
      {clip.word.station !== null && <Button onPress={() => decide(null)}>{LINE_UP.byItself}</Button>}
    </SlipDialog>
  );
}
