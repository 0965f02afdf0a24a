// The part of Papa Parse the pure core uses. The community types pull in Node's, which the core must not see.

interface ParseError {
  readonly type: string;
  readonly code: string;
  readonly message: string;
  readonly row?: number;
}

interface UnparseOptions {
  readonly quotes?: boolean | readonly boolean[];
  readonly newline?: string;
  readonly escapeFormulae?: boolean | RegExp;
}

declare const papa: {
  /** Splits CSV text into rows of fields (RFC 4180). */
  parse(
    text: string,
    options: { readonly skipEmptyLines?: boolean | 'greedy'; readonly delimiter?: string },
  ): { readonly data: string[][]; readonly errors: readonly ParseError[] };
  /** Joins rows of fields into CSV text (RFC 4180). */
  unparse(rows: readonly (readonly (string | number)[])[], options?: UnparseOptions): string;
};

export default papa;
