import { memo } from 'react';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import { countGivenLanes } from '../../../src-core/marking/given-lanes.ts';
import { moment, REVIEW, wholeMoment } from '../../text/english/review.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { CountLines } from './count-lines.tsx';
import { type CountSheet, getShareOf } from './count-sheet.ts';
import { EvidenceColumns, LaneHeads } from './evidence-columns.tsx';
import type { EvidenceDrawing } from './evidence-drawing.ts';
import type { FilmControl } from './film-control.ts';
import { type Performers, PerformersLine } from './performers-line.tsx';
import { useFilmState } from './use-film.ts';

/** The count sheet beside the film: stills, motion, lanes and unison on one axis of time, downwards. */
export const CountSheetPanel = memo(function CountSheetPanel({
  lesson,
  clip,
  sheet,
  drawing,
  control,
  performers,
}: {
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly sheet: CountSheet;
  readonly drawing: EvidenceDrawing;
  readonly control: FilmControl;
  /** Null: nothing is counted, so no lanes either. */
  readonly performers: Performers | null;
}) {
  const isCounted = sheet.without === null;
  const [before, after] = (['before', 'after'] as const).map((kind) =>
    sheet.folds.find((fold) => fold.kind === kind),
  );
  return (
    <Sheet
      label={isCounted ? REVIEW.countSheet : REVIEW.stillsSheet}
      className={`count ${isCounted ? '' : 'bare'}`}
    >
      <Head isCounted={isCounted} drawing={drawing} />
      <div className="count-scroll">
        {before && <FoldLine fold={before} />}
        <div className="cb" style={{ '--lines': sheet.lines.length } as React.CSSProperties}>
          <CountLines {...{ lesson, clip, sheet, control }} />
          <EvidenceColumns drawing={drawing} sheet={sheet} control={control} />
          {sheet.lines.length > 0 && <Cursor control={control} sheet={sheet} />}
          <Missing sheet={sheet} clip={clip} hasLanes={drawing.lanes.length > 0} />
        </div>
        {after && <FoldLine fold={after} />}
      </div>
      {performers && <PerformersLine {...performers} />}
    </Sheet>
  );
});

function Head({ isCounted, drawing }: { readonly isCounted: boolean; readonly drawing: EvidenceDrawing }) {
  return (
    <div className="ch">
      <div>
        <b>{isCounted ? REVIEW.rep : REVIEW.still}</b>
        <small>{isCounted ? REVIEW.atTurn : REVIEW.evenly}</small>
      </div>
      <div />
      <div>
        {REVIEW.motion}
        <small>{REVIEW.upDown}</small>
      </div>
      <LaneHeads lanes={drawing.lanes} />
      <div>
        {REVIEW.unison}
        <small>{drawing.score?.toFixed(2)}</small>
      </div>
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

/** What is missing on the sheet and why, on a slip over the empty columns. */
function Missing({
  sheet,
  clip: { seen },
  hasLanes,
}: {
  readonly sheet: CountSheet;
  readonly clip: ClipView;
  readonly hasLanes: boolean;
}) {
  const isAlone = seen.lanes !== null && countGivenLanes(seen.lanes) === 1;
  const isLaneless = !hasLanes && !seen.isMeasuring;
  const what = sheet.without ?? (isLaneless ? (isAlone ? 'alone' : 'no-lanes') : null);
  if (what === null || what === 'asked') return null;
  const { head, text } = REVIEW.without[what];
  return (
    <p className="without">
      <b>{head}</b> {text}
    </p>
  );
}

function Cursor({ control, sheet }: { readonly control: FilmControl; readonly sheet: CountSheet }) {
  const share = useFilmState(control, ({ seconds }) => getShareOf(sheet, seconds));
  const at = useFilmState(control, ({ seconds }) => moment(seconds));
  return (
    <div className="hair" aria-hidden="true" style={{ top: `${share * 100}%` }}>
      <b>{at}</b>
    </div>
  );
}
