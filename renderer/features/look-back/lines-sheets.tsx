import type { Series } from '../../../src-core/marking/look-back/build-series.ts';
import type { LookBack } from '../../../src-core/marking/look-back/look-back.ts';
import { nameFlag } from '../../text/english/flags.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { SmallPlot } from './small-plot.tsx';
import { findTop, listCriteria, listRows } from './strand-rows.ts';

const NO_BREAKS: readonly boolean[] = [];

/** One series with its head, as a line of a list. */
interface Line {
  readonly key: string;
  readonly head: string;
  readonly series: Series | undefined;
  readonly breaks: readonly boolean[];
}

/** Every criterion for the class, or one of them for the class and each squad. */
export function CriteriaSheet({
  lookBack,
  criterion,
}: {
  readonly lookBack: LookBack;
  /** A clip's criterion by its code, or a squad's as `squad:<code>`; null: all of them. */
  readonly criterion: string | null;
}) {
  const all = listCriteria(lookBack);
  const one = all.find(({ key }) => key === criterion);
  const lines: readonly Line[] = one
    ? listRows(lookBack).map((row) => ({
        key: row.key,
        head: row.name,
        series: one.get(row.strand),
        breaks: row.breaks,
      }))
    : all.map(({ key, label, get }) => ({
        key,
        head: label,
        series: get(lookBack.whole),
        breaks: NO_BREAKS,
      }));
  const title = one ? one.label : LOOK_BACK.byCriterion;
  return <Lines title={title} lines={lines} figure="criterion" />;
}

/** How many flags of each kind came up. */
export function FlagsSheet({ lookBack: { flagKinds } }: { readonly lookBack: LookBack }) {
  const lines = flagKinds.map(({ code, flags }) => ({
    key: code,
    head: nameFlag(code),
    series: flags,
    breaks: NO_BREAKS,
  }));
  return <Lines title={LOOK_BACK.byFlag} lines={lines} figure="flags" />;
}

function Lines({
  title,
  lines,
  figure,
}: {
  readonly title: string;
  readonly lines: readonly Line[];
  readonly figure: 'criterion' | 'flags';
}) {
  const top = figure === 'flags' ? findTop(...lines.flatMap(({ series }) => series ?? [])) : 1;
  return (
    <Sheet label={title} className="look-sheet">
      <h2>{title}</h2>
      {lines.length === 0 && <p className="pen">{LOOK_BACK.none}</p>}
      <table>
        <tbody>
          {lines.map(({ key, head, series, breaks }) => (
            <tr key={key}>
              <th scope="row">{head}</th>
              <td>
                {series && <SmallPlot label={`${title}, ${head}`} {...{ series, figure, breaks, top }} />}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sheet>
  );
}
