/**
 * What two sequences cost to lay side by side, rows (clips, say) against columns (slots, say). Costs may be
 * negative; Infinity forbids a move.
 */
export interface AlignmentCosts {
  readonly rows: number;
  readonly columns: number;
  /** Row and column stand for each other. */
  readonly match: (row: number, column: number) => number;
  /** The row stands for no column; `passed` columns lie before it. */
  readonly skipRow: (row: number, passed: number) => number;
  /** No row stands for the column. */
  readonly skipColumn: (column: number) => number;
}

/** Where one row ended: its column, or null where it was skipped, and how many columns lay before it then. */
export interface AlignedRow {
  readonly column: number | null;
  readonly passed: number;
}

/** A cheapest alignment, with what is needed to price any other. */
export interface Alignment {
  /** Infinity where every alignment is forbidden. */
  readonly cost: number;
  /** One entry per row; empty where every alignment is forbidden. */
  readonly rows: readonly AlignedRow[];
  /** Cost of the cheapest alignment in which `row` is consumed at `passed` columns by a move of that cost. */
  readonly priceThrough: (row: number, passed: number, move: { cost: number; matches: boolean }) => number;
}

type Table = readonly (readonly number[])[];

/**
 * Global alignment of least total cost (Needleman and Wunsch 1970, "A general method applicable to the search
 * for similarities in the amino acid sequence of two proteins"; with costs instead of scores, so their score is
 * minus this cost, and unit costs give the Levenshtein distance).
 *
 * Ties: a match is taken before a skipped row, and that before a skipped column, from the front.
 */
export function align(costs: AlignmentCosts): Alignment {
  const costBefore = sweepForward(costs);
  const costAfter = sweepBackward(costs);
  const cost = at(costAfter, 0, 0);
  return {
    cost,
    rows: Number.isFinite(cost) ? trace(costs, costAfter) : [],
    priceThrough: (row, passed, move) =>
      at(costBefore, row, passed) + move.cost + at(costAfter, row + 1, passed + (move.matches ? 1 : 0)),
  };
}

/** `table[row][passed]`: cheapest way to have consumed that many rows and columns. */
function sweepForward(costs: AlignmentCosts): Table {
  const table: number[][] = Array.from({ length: costs.rows + 1 }, () => []);
  table.forEach((line, row) => {
    for (let passed = 0; passed <= costs.columns; passed += 1) {
      const isStart = row === 0 && passed === 0;
      line[passed] = isStart ? 0 : priceArrival(costs, table, { row, passed });
    }
  });
  return table;
}

function priceArrival(
  costs: AlignmentCosts,
  costBefore: Table,
  { row, passed }: { row: number; passed: number },
): number {
  const never = Number.POSITIVE_INFINITY;
  return Math.min(
    row > 0 && passed > 0 ? at(costBefore, row - 1, passed - 1) + costs.match(row - 1, passed - 1) : never,
    row > 0 ? at(costBefore, row - 1, passed) + costs.skipRow(row - 1, passed) : never,
    passed > 0 ? at(costBefore, row, passed - 1) + costs.skipColumn(passed - 1) : never,
  );
}

/** `table[row][passed]`: cheapest way to consume the rest from there. */
function sweepBackward(costs: AlignmentCosts): Table {
  const table: number[][] = Array.from({ length: costs.rows + 1 }, () => []);
  for (let row = costs.rows; row >= 0; row -= 1) {
    for (let passed = costs.columns; passed >= 0; passed -= 1) {
      const line = table[row];
      if (line === undefined) continue;
      const isEnd = row === costs.rows && passed === costs.columns;
      line[passed] = isEnd ? 0 : Math.min(...priceMoves(costs, table, { row, passed }));
    }
  }
  return table;
}

/** What the rest costs when it begins with a match, a skipped row, a skipped column. */
function priceMoves(
  costs: AlignmentCosts,
  costAfter: Table,
  { row, passed }: { row: number; passed: number },
): [number, number, number] {
  const never = Number.POSITIVE_INFINITY;
  const hasRow = row < costs.rows;
  const hasColumn = passed < costs.columns;
  return [
    hasRow && hasColumn ? costs.match(row, passed) + at(costAfter, row + 1, passed + 1) : never,
    hasRow ? costs.skipRow(row, passed) + at(costAfter, row + 1, passed) : never,
    hasColumn ? costs.skipColumn(passed) + at(costAfter, row, passed + 1) : never,
  ];
}

function trace(costs: AlignmentCosts, costAfter: Table): AlignedRow[] {
  const aligned: AlignedRow[] = [];
  let passed = 0;
  while (aligned.length < costs.rows) {
    const row = aligned.length;
    const prices = priceMoves(costs, costAfter, { row, passed });
    const cheapest = prices.indexOf(Math.min(...prices));
    if (cheapest === 2) {
      passed += 1;
    } else {
      aligned.push({ column: cheapest === 0 ? passed : null, passed });
      if (cheapest === 0) passed += 1;
    }
  }
  return aligned;
}

function at(table: Table, row: number, passed: number): number {
  return table[row]?.[passed] ?? Number.POSITIVE_INFINITY;
}
