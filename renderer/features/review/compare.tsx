import { useEffect, useMemo } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { type AlignedSheets, alignSheets } from './aligned-sheet.ts';
import { CompareGroup, CompareHead } from './compare-group.tsx';
import { buildCountSheet, type CountSheet } from './count-sheet.ts';
import { drawEvidence } from './evidence-drawing.ts';
import type { EvidenceShelf } from './evidence-shelf.ts';
import { Film } from './film.tsx';
import type { FilmControl } from './film-control.ts';
import type { QueueItem } from './review-queue.ts';
import { Transport } from './transport.tsx';
import { useComparedEvidence } from './use-evidence.ts';

/**
 * Two to four squads' films of one station in step, each from its first rep where that is known, and under each its
 * reps, motion and lanes, all on one axis of time that begins with the first rep.
 */
export function Compare({
  client,
  shelf,
  lesson,
  items,
  names,
  control,
  sheet,
  onClose,
  onShow,
}: {
  readonly client: DeskClient;
  readonly shelf: EvidenceShelf;
  readonly lesson: LessonView;
  readonly items: readonly QueueItem[];
  readonly names: LessonNames;
  readonly control: FilmControl;
  /** Of the clip on the desk, counted from its first rep. */
  readonly sheet: CountSheet;
  readonly onClose: () => void;
  readonly onShow: (clip: string) => void;
}) {
  const [own] = items;
  const { aligned, drawings } = useAligned(shelf, lesson, items);
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
        <p className="cap">{REVIEW.compareStart[findStart(aligned)]}</p>
        <Button className="push" onPress={onClose} keyId="compare">
          {REVIEW.closeCompare}
        </Button>
      </header>
      <div className="row" style={{ '--films': items.length } as React.CSSProperties}>
        {items.map(({ clip, squad }, at) => {
          const [one, drawing] = [aligned.sheets[at], drawings[at]];
          if (!one || !drawing) return null;
          return (
            <div key={clip.id} className="one">
              <div className="top">
                <button type="button" className="btn bare" onClick={() => onShow(clip.id)}>
                  <SquadMark squad={squad} />
                </button>
                <Film
                  {...{ client, clip, names, control }}
                  lesson={lesson.lesson}
                  offsetSeconds={one.firstSeconds}
                  numbers={{ ...drawing, onMove: null }}
                  poster={one.lines[0]?.jpeg ?? null}
                />
                <CompareHead sheet={one} drawing={drawing} />
              </div>
              <CompareGroup sheet={one} {...{ clip, drawing, control, aligned }} isLeading={at === 0} />
            </div>
          );
        })}
      </div>
      <Transport control={control} sheet={sheet} lengthSeconds={length} />
    </Sheet>
  );
}

function useAligned(shelf: EvidenceShelf, lesson: LessonView, items: readonly QueueItem[]) {
  const clips = useMemo(() => items.map(({ clip }) => clip), [items]);
  const evidence = useComparedEvidence(shelf, lesson, clips);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is made anew each time, what is in it is not
  return useMemo(() => {
    const aligned = alignSheets(clips.map((clip, at) => buildCountSheet(clip, evidence[at] ?? null)));
    const drawings = aligned.sheets.map((sheet, at) =>
      drawEvidence(evidence[at] ?? null, sheet, sheet.getShare),
    );
    return { aligned, drawings };
  }, [clips, ...evidence]);
}

function findStart({ sheets }: AlignedSheets): keyof typeof REVIEW.compareStart {
  const counted = sheets.filter(({ without }) => without === null).length;
  if (counted === sheets.length) return 'reps';
  return counted === 0 ? 'zero' : 'some';
}
