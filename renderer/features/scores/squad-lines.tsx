import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import { points, SCORES } from '../../text/english/scores.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { Figures } from './figures.tsx';
import type { LineActs } from './line-acts.ts';
import { PupilLine } from './pupil-line.tsx';
import type { SquadRow } from './score-table.ts';
import type { Selection } from './selection.ts';
import { SlotMark } from './slot-mark.tsx';
import { SquadPoints } from './squad-points.tsx';

/** A squad's line, and its pupils' below it when it is open. */
export function SquadLines({
  lesson,
  row,
  name,
  slots,
  isOpen,
  selection,
  acts,
}: {
  readonly lesson: LessonView;
  readonly row: SquadRow;
  readonly name: string;
  /** Columns of slots in the table: the longest route's. */
  readonly slots: number;
  readonly isOpen: boolean;
  readonly selection: Selection | null;
  readonly acts: LineActs;
}) {
  const { score, boxes, squad } = row;
  const { plan } = lesson;
  const isChosen = selection?.kind === 'squad' && selection.squad === squad;
  return (
    <>
      <tr className={`sq ${isOpen ? 'open' : ''} ${isChosen ? 'chosen' : ''}`}>
        <th scope="row">
          <button
            type="button"
            className="op"
            data-row={`squad ${squad}`}
            aria-expanded={isOpen}
            aria-label={isOpen ? SCORES.close(name) : SCORES.open(name)}
            onFocus={() => acts.select({ kind: 'squad', squad })}
            onClick={() => acts.toggle(squad)}
          >
            <Glyph name={isOpen ? 'down' : 'fwd'} />
            <SquadMark squad={squad} />
          </button>
        </th>
        {Array.from({ length: slots }, (_, at) => {
          const box = boxes[at];
          // biome-ignore lint/suspicious/noArrayIndexKey: slots are known by their place
          return <td key={at}>{box && <SlotMark box={box} onShow={acts.show} />}</td>;
        })}
        <td className={`r ${row.areClipsInked ? '' : 'pencilled'}`}>
          <b>{points(row.clipPoints)}</b>
          <small>{SCORES.of(row.clipMax)}</small>
        </td>
        {score.criteria.map((mark) => (
          <td key={mark.criterion} className="c">
            <SquadPoints mark={mark} onDecide={acts.decide} {...{ squad, name, plan }} />
          </td>
        ))}
        <Figures {...score} isInked={row.isInked} hasScale={plan.scale.length > 0} />
      </tr>
      {isOpen &&
        row.pupils.map((pupil) => (
          <PupilLine
            key={pupil.pupil.id}
            score={pupil}
            columns={slots + 1 + score.criteria.length}
            hasScale={plan.scale.length > 0}
            isChosen={selection?.kind === 'pupil' && selection.pupil === pupil.pupil.id}
            acts={acts}
          />
        ))}
    </>
  );
}
