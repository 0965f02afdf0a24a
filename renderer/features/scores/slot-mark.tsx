import { SCORES } from '../../text/english/scores.ts';
import { getFlagGlyph } from '../../ui/flag-tag.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { SlotBox } from './score-table.ts';

/** A slot's stamped box under its station's letter; pressing it shows the clip. */
export function SlotMark({
  box,
  onShow,
}: {
  readonly box: SlotBox;
  readonly onShow: (clip: string) => void;
}) {
  const { clip, station, result, state, points } = box;
  const label = SCORES.box(station, SCORES.results[result] + SCORES.states[state], points);
  const face = (
    <>
      <em aria-hidden="true">{station}</em>
      <BoxFace box={box} />
    </>
  );
  if (clip === null) {
    return (
      <span className="cl" role="img" aria-label={label}>
        {face}
      </span>
    );
  }
  return (
    <button type="button" className="cl" aria-label={label} title={label} onClick={() => onShow(clip)}>
      {face}
    </button>
  );
}

/** The box alone: inked, pencilled, struck twice (lost to the order), dotted (no clip) or under a flag. */
export function BoxFace({ box }: { readonly box: Pick<SlotBox, 'result' | 'state' | 'flag' | 'isByHand'> }) {
  const { result, state, flag, isByHand } = box;
  if (state === 'flagged' && flag) {
    return (
      <span className="box need">
        <Glyph name={getFlagGlyph(flag)} />
      </span>
    );
  }
  if (result === 'no-clip') return <span className="box empty" />;
  if (result === 'lost') return <span className={`box void ${state === 'inked' ? '' : 'soft'}`} />;
  return (
    <span className={`box ${state === 'inked' ? 'inked' : 'pencilled'} ${isByHand ? 'by-hand' : ''}`}>
      {result === 'earned' && <Glyph name="tick" />}
      {result === 'partly' && <Glyph name="minus" />}
      {result === 'unmet' && <Glyph name="cross" />}
    </span>
  );
}
