import type { AccountSheet } from '../../../src-core/gradebook/account-sheet.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';

/** The workbook's second sheet: where each point came from; what is pencilled stands in pencil, as it will there. */
export function AccountTable({ account: { heads, rows } }: { readonly account: AccountSheet }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="pv" tabIndex={0} aria-label={HAND_IN.accountTable}>
      <table className="print">
        <caption className="vh">{HAND_IN.accountTable}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ cells, isPencilled }, line) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
            <tr key={line} className={isPencilled ? 'pencilled' : ''}>
              {cells.map((cell, at) => (
                <td key={heads[at]} className={typeof cell === 'number' ? 'num' : ''}>
                  {cell ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
