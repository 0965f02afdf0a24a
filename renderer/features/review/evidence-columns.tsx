import { REVIEW } from '../../text/english/review.ts';
import type { CountSheet } from './count-sheet.ts';
import type { EvidenceDrawing } from './evidence-drawing.ts';

/** Threads, motion trace, lane marks and unison ribbon, each on the stills' axis. */
export function EvidenceColumns({
  drawing,
  sheet,
}: {
  readonly drawing: EvidenceDrawing;
  readonly sheet: CountSheet;
}) {
  const { trace, marks, lanes, unison, score } = drawing;
  const late = lanes.flatMap(({ isLate }, at) => (isLate ? [at + 1] : []));
  return (
    <>
      <div className="threads" aria-hidden="true">
        {sheet.lines.map(({ top, height, atSeconds }) => (
          <i key={atSeconds} style={{ top: `${(top + height / 2) * 100}%` }} />
        ))}
      </div>
      <div
        className="trace"
        role="img"
        aria-label={REVIEW.traceWords(sheet.lines.length, sheet.fromSeconds, sheet.toSeconds)}
      >
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          {trace && <path d={trace} />}
        </svg>
      </div>
      {sheet.hasLanes && (
        <>
          <div className="lanes" role="img" aria-label={REVIEW.lanesWords(lanes.length, late)}>
            {marks.map(({ lane, rep, top, look }) => (
              <i
                key={`${lane}-${rep}`}
                className={look}
                style={{ left: `${((lane + 0.5) / lanes.length) * 100}%`, top: `${top * 100}%` }}
              />
            ))}
          </div>
          <div className="uni" role="img" aria-label={REVIEW.unisonWords(score ?? 0)}>
            <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
              {unison && <path d={unison} />}
            </svg>
          </div>
        </>
      )}
    </>
  );
}
