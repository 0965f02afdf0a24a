import { useEffect } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import type { CountSheet } from './count-sheet.ts';
import { Film } from './film.tsx';
import type { FilmControl } from './film-control.ts';
import type { QueueItem } from './review-queue.ts';
import { Transport } from './transport.tsx';

/** Two to four squads' films of one station in step, each from its first rep where that is known. */
export function Compare({
  client,
  lesson,
  items,
  names,
  control,
  sheet,
  onClose,
  onShow,
}: {
  readonly client: DeskClient;
  readonly lesson: LessonView;
  readonly items: readonly QueueItem[];
  readonly names: LessonNames;
  readonly control: FilmControl;
  readonly sheet: CountSheet;
  readonly onClose: () => void;
  readonly onShow: (clip: string) => void;
}) {
  const [own] = items;
  const isByReps = items.every(({ clip }) => clip.seen.reps?.count);
  useEffect(() => {
    control.seek(0);
    control.play();
    return control.pause;
  }, [control]);
  if (!own) return null;
  const length = Math.max(...items.map(({ clip }) => clip.durationSeconds ?? 0));
  return (
    <Sheet label={REVIEW.compare} className="compare">
      <header className="head">
        <h2>{REVIEW.compareTitle(names.station(own.station))}</h2>
        <p className="cap">{isByReps ? REVIEW.compareStart.reps : REVIEW.compareStart.zero}</p>
        <Button className="push" onPress={onClose} keyId="compare">
          {REVIEW.closeCompare}
        </Button>
      </header>
      <div className="row" style={{ '--films': items.length } as React.CSSProperties}>
        {items.map(({ clip, squad }) => (
          <div key={clip.id} className="one">
            <button type="button" className="btn bare" onClick={() => onShow(clip.id)}>
              <SquadMark squad={squad} />
            </button>
            <Film
              {...{ client, clip, names, control }}
              lesson={lesson.lesson}
              offsetSeconds={isByReps ? (clip.seen.reps?.firstSeconds ?? 0) : 0}
            />
          </div>
        ))}
      </div>
      <Transport control={control} sheet={sheet} lengthSeconds={length} />
    </Sheet>
  );
}
