import { type ReactNode, useMemo, useRef } from 'react';
import { isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { Compare } from './compare.tsx';
import { buildCountSheet } from './count-sheet.ts';
import { CountSheetPanel } from './count-sheet-panel.tsx';
import { drawEvidence } from './evidence-drawing.ts';
import { Film } from './film.tsx';
import { listComparable, type QueueItem } from './review-queue.ts';
import { ScorePanel } from './score-panel.tsx';
import { findConfirmation, findRestAnswered, isInked } from './score-sheet.ts';
import { Transport } from './transport.tsx';
import { useEvidence } from './use-evidence.ts';
import { useFilmControl } from './use-film.ts';
import { useFilmKeys } from './use-film-keys.ts';
import type { ReviewWay } from './use-review.ts';
import { useScoreKeys } from './use-score-keys.ts';
import { useSeenProposals } from './use-seen-proposals.ts';

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
  const evidence = useEvidence(desk.client, lesson, clip, way.next?.clip ?? null);
  const sheet = useMemo(() => buildCountSheet(clip, evidence), [clip, evidence]);
  const tolerance = lesson.plan.tolerances.togetherSeconds;
  const drawing = useMemo(() => drawEvidence(evidence, sheet, tolerance), [evidence, sheet, tolerance]);
  const seen = useSeenProposals(clip);
  const note = useRef<HTMLInputElement>(null);
  const firstOpen = useRef<HTMLInputElement>(null);
  const acts = {
    decide: desk.decide,
    confirm: () => {
      if (isInked(clip)) return way.goOn();
      const confirmation = findConfirmation(clip, seen.current);
      if (!confirmation) return firstOpen.current?.focus();
      void desk.decide(confirmation);
      way.goOn();
    },
    answerRest: (met: boolean) => {
      const confirmation = isInked(clip) ? null : findRestAnswered(clip, met, seen.current);
      if (confirmation) void desk.decide(confirmation);
      way.goOn();
    },
    back: way.goBack,
  };
  useFilmKeys(control, sheet);
  useScoreKeys({ clip, acts, note });
  const flags = lesson.flags.filter((flag) => flag.flag.clip === clip.id && isOpen(flag));
  const compared = isComparing ? listComparable(way.queue, clip.id) : [];
  return (
    <>
      {compared.length > 1 ? (
        <Compare
          key={compared.map((one) => one.clip.id).join(' ')}
          {...{ lesson, names, control, sheet }}
          client={desk.client}
          items={compared}
          onClose={() => onCompare(false)}
          onShow={way.show}
        />
      ) : (
        <>
          <CountSheetPanel lesson={lesson.lesson} {...{ clip, sheet, drawing, control }} />
          <div className="mid">
            <Sheet label={REVIEW.player} className="film">
              <Film
                key={clip.id}
                client={desk.client}
                lesson={lesson.lesson}
                lanes={drawing.lanes}
                poster={sheet.lines[0]?.jpeg ?? null}
                {...{ clip, names, control }}
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
      <ScorePanel {...{ lesson, item, flags, names, acts, note, firstOpen }} />
    </>
  );
}
