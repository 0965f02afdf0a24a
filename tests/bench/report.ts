/** A figure held against its bar. */
export interface HeldFigure {
  readonly what: string;
  readonly figure: number;
  /** At most, or at least, so much. */
  readonly bar: readonly ['at most' | 'at least', number];
  readonly digits?: number;
}

/** Where a bench says what it measured. */
export interface BenchReport {
  /** A line that holds nothing against a bar. */
  readonly print: (line: string) => void;
  /** A row of the table at the end; also printed at once. */
  readonly hold: (held: HeldFigure) => void;
}

/** A report that prints as it goes, and all held figures once more as one table. */
export function createBenchReport(print: (line: string) => void) {
  const rows: (readonly string[])[] = [];
  const report: BenchReport = {
    print,
    hold: (held) => {
      const row = describe(held);
      rows.push(row);
      print(row.join('  '));
    },
  };
  const printTable = () => {
    const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
    for (const row of rows) print(row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '));
  };
  return { report, printTable };
}

function describe({ what, figure, bar: [side, bound], digits = 3 }: HeldFigure): readonly string[] {
  const isMet = side === 'at most' ? figure <= bound : figure >= bound;
  return [what, figure.toFixed(digits), `${side} ${bound}`, isMet ? 'met' : 'NOT MET'];
}
