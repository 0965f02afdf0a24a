import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import { REVIEW } from '../../text/english/review.ts';
import type { AlignedSheet, AlignedSheets } from './aligned-sheet.ts';
import { type CountLine, findLineAt } from './count-sheet.ts';
import { Drawn, LaneHeads, LaneMarks } from './evidence-columns.tsx';
import type { EvidenceDrawing } from './evidence-drawing.ts';
import type { FilmControl } from './film-control.ts';
import { useFilmState } from './use-film.ts';

/** What stands over one squad's reps and lanes. */
export function CompareHead({
  sheet,
  drawing,
}: {
  readonly sheet: AlignedSheet;
  readonly drawing: EvidenceDrawing;
}) {
  const isCounted = sheet.without === null;
  return (
    <div className="gh">
      <div>
        <b>{isCounted ? sheet.lines.length : REVIEW.noCount}</b>
        <small>{REVIEW.reps(sheet.lines.length)}</small>
      </div>
      <div>
        {REVIEW.motion}
        <small>{REVIEW.unisonShort(drawing.score)}</small>
      </div>
      <LaneHeads lanes={drawing.lanes} />
    </div>
  );
}

/** A line of a rep must have room for its number. */
const LINE_REM = 1.7;
/** Seconds are drawn no smaller and no larger than this. */
const SECOND_REM = [0.4, 1.6] as const;

/** One squad's reps, motion and lanes on the axis that all squads share; pressing a rep plays it in every film. */
export function CompareGroup({
  clip,
  sheet,
  drawing,
  control,
  aligned,
  isLeading,
}: {
  readonly clip: ClipView;
  readonly sheet: AlignedSheet;
  readonly drawing: EvidenceDrawing;
  readonly control: FilmControl;
  readonly aligned: AlignedSheets;
  /** Its reps are what the arrow keys step through, and are kept in view. */
  readonly isLeading: boolean;
}) {
  const { firstSeconds } = sheet;
  const current = useFilmState(control, ({ seconds }) => findLineAt(sheet, seconds + firstSeconds));
  const [least, most] = SECOND_REM;
  const secondRem = Math.max(least, Math.min(most, LINE_REM / (aligned.shortestRepSeconds ?? LINE_REM)));
  const lines = sheet.without === null ? sheet.lines : [];
  const why = sheet.without === null || sheet.without === 'asked' ? null : REVIEW.without[sheet.without].head;
  return (
    <div className="group" style={{ minHeight: `${secondRem * aligned.lengthSeconds}rem` }}>
      <div className="rules" aria-hidden="true">
        {lines.map(({ top, height, atSeconds }) => (
          <i key={atSeconds} style={{ top: `${(top + height) * 100}%` }} />
        ))}
      </div>
      <ol className="nos">
        {lines.map((line, at) => (
          <li
            key={line.atSeconds}
            className={at === current ? 'cur' : ''}
            style={{ top: `${line.top * 100}%`, height: `${line.height * 100}%` }}
            ref={isLeading && at === current ? keepInView : null}
          >
            <button
              type="button"
              aria-label={REVIEW.repLabel(line.number ?? at + 1, line.atSeconds)}
              aria-current={at === current}
              onClick={() => control.playStretch(getStretch(line, firstSeconds))}
            >
              {line.number}
            </button>
          </li>
        ))}
      </ol>
      <div className="trace" role="img" aria-label={REVIEW.motionOf(clip.durationSeconds ?? 0)}>
        <Drawn path={drawing.trace} />
      </div>
      <LaneMarks drawing={drawing} />
      {why && <p className="why">{why}</p>}
      <Cursor control={control} lengthSeconds={aligned.lengthSeconds} />
    </div>
  );
}

function getStretch({ fromSeconds, toSeconds }: CountLine, firstSeconds: number) {
  return { fromSeconds: fromSeconds - firstSeconds, toSeconds: toSeconds - firstSeconds };
}

function keepInView(line: HTMLLIElement | null): void {
  line?.scrollIntoView({ block: 'nearest' });
}

function Cursor({
  control,
  lengthSeconds,
}: {
  readonly control: FilmControl;
  readonly lengthSeconds: number;
}) {
  const share = useFilmState(control, ({ seconds }) => Math.min(1, seconds / lengthSeconds));
  return <div className="hair" aria-hidden="true" style={{ top: `${share * 100}%` }} />;
}
