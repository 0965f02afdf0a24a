import type { GradeSheet } from '../../../src-core/gradebook/grade-sheet.ts';
import { FIELD_NAMES, HAND_IN } from '../../text/english/hand-in.ts';

/** Lines of the file that are shown as they stand. */
const RAW_LINES = 5;

/** A cell of more signs than this is set in several lines. */
const LONG_CELL = 60;

/** The rows as mapped: our name of each column above, the destination's below. */
export function PreviewTable({ sheet }: { readonly sheet: GradeSheet }) {
  const { columns, rows } = sheet;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="pv" tabIndex={0} aria-label={HAND_IN.table}>
      <table className="print">
        <caption className="vh">{HAND_IN.table}</caption>
        <thead>
          <tr>
            {columns.map(({ head, field, kind }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their place
              <th key={at} scope="col" className={kind === 'number' ? 'r' : ''}>
                {FIELD_NAMES[field]}
                <span className="map">{head}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, line) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
            <tr key={line}>
              {row.map((cell, at) => {
                const column = columns[at];
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: cells are known by their place
                  <td key={at} className={getLook(column?.kind, column?.field, cell)}>
                    {cell === null || cell === '' ? HAND_IN.nothing : <span>{cell}</span>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function getLook(kind: string | undefined, field: string | undefined, cell: string | number | null): string {
  const isOpen = field === 'state' && typeof cell === 'string' && /unconfirmed|not final/.test(cell);
  return [
    kind === 'number' ? 'r num' : '',
    kind === 'id' ? 'col1' : '',
    isOpen ? 'un' : '',
    field === 'comment' || String(cell ?? '').length > LONG_CELL ? 'long' : '',
  ].join(' ');
}

/** The first lines of the file, as bytes go into it. */
export function RawLines({ text }: { readonly text: string }) {
  const lines = text.split('\r\n').filter((line) => line !== '');
  const more = lines.length - RAW_LINES;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="raw" tabIndex={0} aria-label={HAND_IN.raw}>
      {lines.slice(0, RAW_LINES).join('\n')}
      {more > 0 && `\n… ${HAND_IN.rawMore(more)}`}
    </section>
  );
}
