import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildCsv, protectText } from '../../src-core/gradebook/csv.ts';
import type { ColumnKind, GradeSheet } from '../../src-core/gradebook/grade-sheet.ts';

// RFC 4180, "Common Format and MIME Type for CSV Files", section 2 (rules from memory), and OWASP, "CSV Injection"
// (owasp.org/www-community/attacks/CSV_Injection).

// The package's own types are not part of this project; this is all that is used of it here.
const papa: { parse: (text: string, options: { delimiter: string }) => { data: string[][] } } = (
  await import(String('papaparse'))
).default;

type Cell = string | number | null;

function buildSheet(kinds: readonly ColumnKind[], rows: readonly (readonly Cell[])[]): GradeSheet {
  return {
    columns: kinds.map((kind, index) => ({ head: `c${index}`, field: 'comment', kind })),
    rows,
  };
}

function textOf(kinds: readonly ColumnKind[], ...rows: readonly (readonly Cell[])[]): string {
  return buildCsv(buildSheet(kinds, rows)).text;
}

/** Rows below the heading, by two readers that are not ours to write. */
const readers: readonly [string, (text: string) => string[][]][] = [
  ['csv-parse', (text) => parse(text, { bom: false }).slice(1)],
  ['Papa Parse', (text) => papa.parse(text.replace(/\r\n$/, ''), { delimiter: ',' }).data.slice(1)],
];

describe('CSV by RFC 4180, section 2', () => {
  test('rule 1: each record is on its own line, ended by CRLF', () => {
    expect(textOf(['text', 'text'], ['a', 'b'], ['c', 'd'])).toBe('c0,c1\r\na,b\r\nc,d\r\n');
  });

  test('rule 4: every line has the same number of fields, empty ones too', () => {
    expect(textOf(['text', 'number', 'text'], ['a', null, '']).split('\r\n')[1]).toBe('a,,');
  });

  test.each([
    ['a comma', 'Quillfeather, Odda', '"Quillfeather, Odda"'],
    ['a line break', 'one\r\ntwo', '"one\r\ntwo"'],
    ['a lone line feed', 'one\ntwo', '"one\ntwo"'],
    ['a lone carriage return', 'one\rtwo', '"one\rtwo"'],
  ])('rule 6: a field with %s stands in double quotes', (_, field, written) => {
    expect(textOf(['text', 'text'], [field, 'x'])).toBe(`c0,c1\r\n${written},x\r\n`);
  });

  test('rule 7: a double quote inside a field is doubled', () => {
    expect(textOf(['text', 'text'], ['b"bb', 'c'])).toBe('c0,c1\r\n"b""bb",c\r\n');
  });

  test.each(readers)('a field of commas, quotes and a line break comes back through %s', (_, read) => {
    expect(read(textOf(['text', 'text'], ['x,"y"\r\nz', 'b']))).toEqual([['x,"y"\r\nz', 'b']]);
  });
});

describe('cells that a spreadsheet would run (OWASP, CSV Injection)', () => {
  test.each([
    ['=1+2";=1+2', `"'=1+2"";=1+2"`],
    [`=1+2'" ;,=1+2`, `"'=1+2'"" ;,=1+2"`],
  ])('the published example %s is written as %s', (input, escaped) => {
    expect(textOf(['text', 'id'], [input, 'k-1'])).toBe(`c0,c1\r\n${escaped},k-1\r\n`);
  });

  test.each(['=', '+', '-', '@', '\t', '\r', '\n'])(
    'a text that begins with %j is led by an apostrophe',
    (start) => {
      expect(protectText(`${start}1`)).toBe(`'${start}1`);
    },
  );

  test('a text that begins otherwise is not touched', () => {
    for (const text of ['Odda', '1+1', "O'Dell", ' =1', '', 'a=b']) expect(protectText(text)).toBe(text);
  });

  test.each([';', '\t', '|'])(
    'a formula after %j, another reader’s separator, stays inside its quotes',
    (separator) => {
      const text = textOf(['text', 'id'], [`well done${separator}=1+2`, 'k-1']);
      expect(text).toContain(`"well done${separator}=1+2"`);
    },
  );

  test('heads are made safe too', () => {
    const sheet = {
      ...buildSheet([], [['x']]),
      columns: [{ head: '=1+2', field: 'comment', kind: 'text' }],
    } as const;
    expect(buildCsv(sheet).text).toBe(`"'=1+2"\r\n"x"\r\n`);
  });

  test('numbers and ids are never changed: a minus is part of them', () => {
    expect(textOf(['id', 'number'], ['-4711', -3])).toBe('c0,c1\r\n-4711,-3\r\n');
  });

  test('an id that looks like a formula is named, not altered', () => {
    const sheet = buildSheet(
      ['id', 'text'],
      [
        ['k-1', 'a'],
        ['@k-2', '=b'],
        ['-3', 'c'],
      ],
    );
    expect(buildCsv(sheet).problems).toEqual([
      { code: 'sheet-id-formula', row: 2, id: '@k-2' },
      { code: 'sheet-id-formula', row: 3, id: '-3' },
    ]);
  });
});

const kind = fc.constantFrom<ColumnKind>('text', 'id', 'number');
const anyText = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.string({ unit: fc.constantFrom(...'=+-@\t\r\n",;|\' a1é😀') }),
);

const table = fc.array(kind, { minLength: 1, maxLength: 5 }).chain((kinds) =>
  fc.record({
    kinds: fc.constant(kinds),
    rows: fc.array(
      fc.tuple(...kinds.map((of) => (of === 'number' ? fc.option(fc.integer()) : fc.option(anyText)))),
      { minLength: 1, maxLength: 6 },
    ),
  }),
);

describe('any table', () => {
  test.each(readers)('comes back through %s, but for the apostrophes of text columns', (_, read) => {
    fc.assert(
      fc.property(table, ({ kinds, rows }) => {
        const expected = rows.map((row) =>
          row.map((cell, column) =>
            kinds[column] === 'text' ? protectText(String(cell ?? '')) : String(cell ?? ''),
          ),
        );
        expect(read(textOf(kinds, ...rows))).toEqual(expected);
      }),
      { numRuns: 1000 },
    );
  });

  test.each(readers)('has no text cell that begins dangerously, as %s sees it', (_, read) => {
    fc.assert(
      fc.property(table, ({ kinds, rows }) => {
        const texts = rows.map((row) => row.map((cell) => String(cell ?? '')));
        const cells = read(textOf(Array(kinds.length).fill('text'), ...texts)).flat();
        expect(cells.filter((cell) => /^[=+\-@\t\r\n]/.test(cell))).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});
