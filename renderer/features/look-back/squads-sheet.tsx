import type { LookBack } from '../../../src-core/marking/look-back/look-back.ts';
import { LOOK_BACK, type Measure } from '../../text/english/look-back.ts';
import { Bib } from '../../ui/bib.tsx';
import { SmallPlot } from './small-plot.tsx';
import { findTop, listRows, type StrandRow } from './strand-rows.ts';

const MEASURES: readonly Measure[] = ['points', 'repsShort', 'unison', 'flags'];

/** The class and its squads, figure by figure: points, clips with reps short, unison, flags. */
export function SquadsSheet({ lookBack }: { readonly lookBack: LookBack }) {
  const rows = listRows(lookBack);
  const tops = {
    class: findTop(lookBack.whole.flags),
    squads: findTop(...lookBack.squads.map(({ flags }) => flags)),
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keyboard
    <section className="sheet look-sheet wide" aria-label={LOOK_BACK.bySquad} tabIndex={0}>
      <h2>{LOOK_BACK.bySquad}</h2>
      <table>
        <thead>
          <tr>
            <td />
            {MEASURES.map((measure) => (
              <th key={measure} scope="col">
                {LOOK_BACK.measures[measure]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <RowHead row={row} />
              {MEASURES.map((measure) => (
                <td key={measure}>
                  <SmallPlot
                    label={`${row.name}, ${LOOK_BACK.measures[measure]}`}
                    series={row.strand[measure]}
                    figure={measure}
                    breaks={row.breaks}
                    {...(measure === 'flags' && { top: row.bib === null ? tops.class : tops.squads })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function RowHead({ row: { name, bib } }: { readonly row: StrandRow }) {
  return (
    <th scope="row">
      {bib && <Bib pinnie={bib} />} {name}
    </th>
  );
}
