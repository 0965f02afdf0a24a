import { REVIEW } from '../../text/english/review.ts';
import { type CountSheet, getMomentAt } from './count-sheet.ts';
import type { EvidenceDrawing } from './evidence-drawing.ts';
import type { FilmControl } from './film-control.ts';
import { wordLags } from './lag-words.ts';

/** Threads, motion trace, lane marks and unison ribbon, each on the stills' axis; hovering them scrubs the film. */
export function EvidenceColumns({
  drawing,
  sheet,
  control,
}: {
  readonly drawing: EvidenceDrawing;
  readonly sheet: CountSheet;
  readonly control: FilmControl;
}) {
  const { trace, unison, score } = drawing;
  const { fromSeconds, toSeconds } = sheet;
  const words =
    sheet.without === null ? REVIEW.traceWords(sheet.lines.length, fromSeconds, toSeconds) : REVIEW.motion;
  return (
    <>
      <div className="threads" aria-hidden="true">
        {sheet.lines.map(({ top, height }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the next clip's lines take the places of this one's
          <i key={at} style={{ top: `${(top + height / 2) * 100}%` }} />
        ))}
      </div>
      <div className="trace" role="img" aria-label={words}>
        <Drawn path={trace} />
      </div>
      <LaneMarks drawing={drawing} />
      <div className="uni" {...name(score !== null, REVIEW.unisonWords(score ?? 0))}>
        <Drawn path={unison} />
      </div>
      <div
        className="scrub"
        aria-hidden="true"
        onPointerMove={({ currentTarget, clientY }) => {
          const { top, height } = currentTarget.getBoundingClientRect();
          if (!control.getState().isPlaying) control.seek(getMomentAt(sheet, (clientY - top) / height));
        }}
        onPointerUp={control.play}
      />
    </>
  );
}

/** A mark for each performer at each rep, hanging lower the later it came. */
export function LaneMarks({ drawing: { lanes, marks } }: { readonly drawing: EvidenceDrawing }) {
  const off = lanes.flatMap(({ isOff }, at) => (isOff ? [at + 1] : []));
  return (
    <div className="lanes" {...name(lanes.length > 0, REVIEW.lanesWords(lanes.length, off))}>
      {marks.map(({ lane, rep, top, look }) => (
        <i
          key={`${lane}-${rep}`}
          className={look}
          style={{ left: `${((lane + 0.5) / lanes.length) * 100}%`, top: `${top * 100}%` }}
        />
      ))}
    </div>
  );
}

/** The heads of the lanes: who is on the beat, and by how much the others are off it. */
export function LaneHeads({ lanes }: Pick<EvidenceDrawing, 'lanes'>) {
  const { lags, unit } = wordLags(lanes.map(({ lagSeconds }) => lagSeconds));
  return (
    <div className="ln" style={{ '--lanes': lanes.length } as React.CSSProperties}>
      {unit !== null && <small className="unit">{unit}</small>}
      {lanes.map(({ isOff }, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lanes are known by their place
        <div key={at} className={isOff ? 'off' : ''}>
          {at + 1}
          <small>{lags[at]}</small>
        </div>
      ))}
    </div>
  );
}

/** A path of a drawing, over the whole of its column. */
export function Drawn({ path }: { readonly path: string }) {
  return (
    <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      {path !== '' && <path d={path} />}
    </svg>
  );
}

function name(isKnown: boolean, label: string) {
  return isKnown ? { role: 'img', 'aria-label': label } : { 'aria-hidden': true };
}
