import { useMemo } from 'react';
import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import { REVIEW, wholeMoment } from '../../text/english/review.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { CountLines } from './count-lines.tsx';
import { type CountSheet, getShareOf } from './count-sheet.ts';
import { EvidenceColumns } from './evidence-columns.tsx';
import { drawEvidence, type EvidenceDrawing } from './evidence-drawing.ts';
import type { FilmControl } from './film-control.ts';
import { useFilmState } from './use-film.ts';

/** The count sheet beside the film: stills, motion, lanes and unison on one axis of time, downwards. */
export function CountSheetPanel({
  lesson,
  clip,
  sheet,
  control,
}: {
  readonly lesson: LessonView;
  readonly clip: ClipView;
  readonly sheet: CountSheet;
  readonly control: FilmControl;
}) {
  const tolerance = lesson.plan.tolerances.togetherSeconds;
  const drawing = useMemo(() => drawEvidence(clip, sheet, tolerance), [clip, sheet, tolerance]);
  const isCounted = sheet.without === null;
  const [before, after] = (['before', 'after'] as const).map((kind) =>
    sheet.folds.find((fold) => fold.kind === kind),
  );
  return (
    <Sheet
      label={isCounted ? REVIEW.countSheet : REVIEW.stillsSheet}
      className={`count ${isCounted ? '' : 'bare'} ${sheet.hasLanes ? '' : 'no-lanes'}`}
    >
      <Head isCounted={isCounted} drawing={drawing} hasLanes={sheet.hasLanes} />
      <div className="count-scroll">
        {before && <FoldLine fold={before} />}
        {sheet.lines.length > 0 && (
          <div className="cb" style={{ '--lines': sheet.lines.length } as React.CSSProperties}>
            <CountLines {...{ lesson: lesson.lesson, clip, sheet, control }} />
            {isCounted && <EvidenceColumns drawing={drawing} sheet={sheet} />}
            <Cursor control={control} sheet={sheet} />
          </div>
        )}
        {after && <FoldLine fold={after} />}
      </div>
      {sheet.without && <Without sheet={sheet} isSearched={clip.isSearched} />}
    </Sheet>
  );
}

function Head(props: {
  readonly isCounted: boolean;
  readonly drawing: EvidenceDrawing;
  readonly hasLanes: boolean;
}) {
  const { isCounted, drawing, hasLanes } = props;
  return (
    <div className="ch">
      <div>
        <b>{isCounted ? REVIEW.rep : REVIEW.still}</b>
        <small>{isCounted ? REVIEW.atTurn : REVIEW.evenly}</small>
      </div>
      {isCounted && (
        <>
          <div />
          <div>
            {REVIEW.motion}
            <small>{REVIEW.upDown}</small>
          </div>
        </>
      )}
      {isCounted && hasLanes && (
        <>
          <div className="ln">
            {drawing.lanes.map(({ lagSeconds, isLate }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lanes are known by their place
              <div key={at} className={isLate ? 'late' : ''}>
                {at + 1}
                <small>{REVIEW.lag(lagSeconds)}</small>
              </div>
            ))}
          </div>
          <div>
            {REVIEW.unison}
            <small>{drawing.score?.toFixed(2)}</small>
          </div>
        </>
      )}
    </div>
  );
}

function FoldLine({ fold }: { readonly fold: CountSheet['folds'][number] }) {
  return (
    <p className="fold">
      {wholeMoment(fold.fromSeconds)} – {wholeMoment(fold.toSeconds)} {REVIEW.folded[fold.kind]}
    </p>
  );
}

function Without({ sheet, isSearched }: { readonly sheet: CountSheet; readonly isSearched: boolean }) {
  if (!sheet.without) return null;
  const { head, text } = REVIEW.without[sheet.without];
  return (
    <p className="without">
      <b>{head}.</b> {text} {!isSearched && REVIEW.searching}
    </p>
  );
}

function Cursor({ control, sheet }: { readonly control: FilmControl; readonly sheet: CountSheet }) {
  const share = useFilmState(control, ({ seconds }) => getShareOf(sheet, seconds));
  return <div className="hair" aria-hidden="true" style={{ top: `${share * 100}%` }} />;
}
