import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { SCORES } from '../../text/english/scores.ts';
import { Sheet } from '../../ui/sheet.tsx';
import type { LineActs } from './line-acts.ts';
import type { SquadRow } from './score-table.ts';
import type { Selection } from './selection.ts';
import { BoxFace } from './slot-mark.tsx';
import { SquadLines } from './squad-lines.tsx';

const LEGEND = [
  { name: SCORES.legend.inked, box: { result: 'earned', state: 'inked', flag: null } },
  { name: SCORES.legend.pencilled, box: { result: 'earned', state: 'pencilled', flag: null } },
  { name: SCORES.legend.open, box: { result: 'open', state: 'pencilled', flag: null } },
  { name: SCORES.legend.lost, box: { result: 'lost', state: 'inked', flag: null } },
  { name: SCORES.legend['no-clip'], box: { result: 'no-clip', state: 'no-clip', flag: null } },
  { name: SCORES.legend.flagged, box: { result: 'earned', state: 'flagged', flag: 'out-of-order' } },
] as const;

/** The table: squads with their stamped boxes, opening to pupils. */
export function ScoreSheetTable({
  lesson,
  rows,
  names,
  open,
  figure,
  selection,
  acts,
}: {
  readonly lesson: LessonView;
  readonly rows: readonly SquadRow[];
  readonly names: LessonNames;
  readonly open: ReadonlySet<string>;
  readonly figure: string;
  readonly selection: Selection | null;
  readonly acts: LineActs;
}) {
  const slots = Math.max(...rows.map(({ boxes }) => boxes.length));
  const { rubric, scale } = lesson.plan;
  return (
    <Sheet label={SCORES.table} className={`tab by-${figure}`}>
      <div className="tab-scroll">
        <table className="print">
          <caption className="vh">{SCORES.table}</caption>
          <thead>
            <tr>
              <th scope="col">{SCORES.squadColumn}</th>
              {Array.from({ length: slots }, (_, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: slots are known by their place
                <th key={at} scope="col" className="c">
                  <span aria-hidden="true">{SCORES.slot(at)}</span>
                  <span className="vh">{SCORES.slotLabel(at)}</span>
                </th>
              ))}
              <th scope="col" className="r">
                {SCORES.clips}
              </th>
              {rubric.squad.map(({ code, label }) => (
                <th key={code} scope="col" className="c">
                  {label}
                </th>
              ))}
              <th scope="col" className="r">
                {SCORES.points}
              </th>
              <th scope="col" className="r">
                {SCORES.percent}
              </th>
              {scale.length > 0 && (
                <th scope="col" className="c">
                  {SCORES.scale}
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <SquadLines
                key={row.squad}
                {...{ lesson, row, slots, selection, acts }}
                name={names.squad(row.squad)}
                isOpen={open.has(row.squad)}
              />
            ))}
          </tbody>
        </table>
      </div>
      <ul className="keyline">
        {LEGEND.map(({ name, box }) => (
          <li key={name}>
            <BoxFace box={{ ...box, isByHand: false }} />
            {name}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
