import { type ReactNode, useMemo, useRef } from 'react';
import { isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { countFromFirstRep } from './aligned-sheet.ts';
import { Compare } from './compare.tsx';
import { CountSheetPanel } from './count-sheet-panel.tsx';
import { drawClip } from './drawn-clip.ts';
import { Film } from './film.tsx';
import { listComparable, type QueueItem } from './review-queue.ts';
import { ScorePanel } from './score-panel.tsx';
import { Transport } from './transport.tsx';
import { useEvidence, useEvidenceShelf } from './use-evidence.ts';
import { useFilmControl } from './use-film.ts';
import { useFilmKeys } from './use-film-keys.ts';
import { usePerformers } from './use-performers.ts';
import type { ReviewWay } from './use-review.ts';
import { useScoreActs } from './use-score-acts.ts';
import { useScoreKeys } from './use-score-keys.ts';

/** One clip on the desk: count sheet, film, class card (given as children), score sheet. */
export function ReviewDesk(
  props: StepProps & {
    readonly way: ReviewWay;
    readonly item: QueueItem;
    readonly isComparing: boolean;
    readonly onCompare: (isOn: boolean) => void;
    readonly children: ReactNode;
  },
) {
  const { lesson, desk, names, way, item, isComparing, onCompare, children } = props;
  const { clip } = item;
  const control = useFilmControl(`${clip.id} ${isComparing}`);
  const shelf = useEvidenceShelf(desk.client);
  const evidence = useEvidence(shelf, lesson, clip, way.next?.clip ?? null);
  const { sheet, drawing } = useMemo(() => drawClip(clip, evidence), [clip, evidence]);
  const { acts, firstOpen, isRefused } = useScoreActs(clip, desk.decide, way);
  const note = useRef<HTMLInputElement>(null);
  const compared = useMemo(
    () => (isComparing ? listComparable(way.queue, clip.id) : []),
    [isComparing, way.queue, clip.id],
  );
  const fromFirstRep = useMemo(() => countFromFirstRep(sheet), [sheet]);
  const performers = usePerformers(clip, evidence, desk.decide);
  const numbers = { ...drawing, onMove: performers?.onSet ?? null };
  useFilmKeys(control, compared.length > 1 ? fromFirstRep : sheet);
  useScoreKeys({ clip, acts, note });
  const flags = lesson.flags.filter((flag) => flag.flag.clip === clip.id && isOpen(flag));
  return (
    <>
      {compared.length > 1 ? (
        <Compare
          key={compared.map((one) => one.clip.id).join(' ')}
          {...{ lesson, names, control, shelf }}
          sheet={fromFirstRep}
          client={desk.client}
          items={compared}
          onClose={() => onCompare(false)}
          onShow={way.show}
        />
      ) : (
        <>
          <CountSheetPanel lesson={lesson.lesson} {...{ clip, sheet, drawing, control, performers }} />
          <div className="mid">
            <Sheet label={REVIEW.player} className="film">
              <Film
                key={clip.id}
                client={desk.client}
                lesson={lesson.lesson}
                poster={sheet.lines[0]?.jpeg ?? null}
                {...{ clip, names, control, numbers }}
              />
              {clip.holds === 'video' && (
                <Transport control={control} sheet={sheet} lengthSeconds={clip.durationSeconds ?? 0} />
              )}
              {isComparing && (
                <p className="cap" role="status">
                  {REVIEW.nothingToCompare}
                </p>
              )}
            </Sheet>
            {children}
          </div>
        </>
      )}
      <ScorePanel {...{ lesson, item, flags, names, acts, note, firstOpen, isRefused }} />
    </>
  );
}
