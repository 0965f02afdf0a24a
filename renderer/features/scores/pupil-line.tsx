import type { PupilScore } from '../../../src-core/marking/points.ts';
import { SCORES } from '../../text/english/scores.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { describePupil, getPupilName } from './describe-pupil.ts';
import { Figures } from './figures.tsx';
import type { LineActs } from './line-acts.ts';

/** A pupil's line: what sets the mark apart from the squad's, and the mark. */
export function PupilLine({
  score,
  columns,
  hasScale,
  isChosen,
  acts,
}: {
  readonly score: PupilScore;
  /** Columns between the name and the figures. */
  readonly columns: number;
  readonly hasScale: boolean;
  readonly isChosen: boolean;
  readonly acts: LineActs;
}) {
  const { pupil, state } = score;
  const name = getPupilName(score);
  const words = describePupil(score);
  const selection = { kind: 'pupil', pupil: pupil.id } as const;
  const instead = state === 'absent' || state === 'excused' ? SCORES.markWord[state] : null;
  return (
    <tr className={`pu ${isChosen ? 'chosen' : ''}`}>
      <th scope="row">
        <button
          type="button"
          className="op"
          data-row={`pupil ${pupil.id}`}
          aria-label={SCORES.whyLabel(name)}
          onFocus={() => acts.select(selection)}
          onClick={() => acts.select(selection)}
        >
          {name}
        </button>
      </th>
      <td colSpan={columns}>
        <span className="ad">
          {words.length === 0 ? (
            <span className="as">{SCORES.asSquad}</span>
          ) : (
            <span className="adj">{words.join('; ')}</span>
          )}
          <button
            type="button"
            className="btn bare edit"
            aria-label={SCORES.adjustLabel(name)}
            onClick={() => acts.adjust(selection)}
          >
            <Glyph name="pencil" />
          </button>
        </span>
      </td>
      <Figures {...score} {...{ instead, hasScale }} isInked={state === 'confirmed'} />
    </tr>
  );
}
