import papa from 'papaparse';
import type { Plan } from './plan.ts';

/** A curriculum standard that criteria may be tagged with. */
export type Standard = Plan['standards'][number];

const SHAPE = 'SHAPE America, National Physical Education Standards, 4th edition, March 2024 (paraphrased)';

/**
 * The four National Physical Education Standards of SHAPE America (4th edition, March 2024), in words of our own. The
 * edition of 2013 had five; the standards' own text is the publisher's and is not copied here.
 */
export const SHAPE_STANDARDS: readonly Standard[] = [
  { code: 'shape-1', text: 'Builds up many different motor skills', source: SHAPE },
  { code: 'shape-2', text: 'Knows how movement and fitness work, and uses that knowledge', source: SHAPE },
  { code: 'shape-3', text: 'Grows in working and getting on with others through movement', source: SHAPE },
  {
    code: 'shape-4',
    text: 'Grows as a person, sees what moving does for them and chooses to be active',
    source: SHAPE,
  },
];

/** What is wrong with a line of a list of standards; lines count from 1, the heading among them. */
export type StandardsProblem =
  | { readonly code: 'standards-column-missing'; readonly column: string }
  | { readonly code: 'standards-line-incomplete'; readonly line: number }
  | { readonly code: 'standards-code-bad'; readonly line: number; readonly value: string }
  | { readonly code: 'standards-code-twice'; readonly line: number; readonly value: string };

const COLUMNS = ['code', 'text', 'source'] as const;
const LONGEST = 200;

/**
 * Reads a list of standards from CSV with the columns `code,text,source` in any order. Codes are brought to small
 * letters, digits and hyphens (`PE.7.2` becomes `pe-7-2`); lines that lack something are left out and named.
 */
export function parseStandards(csv: string): {
  readonly standards: readonly Standard[];
  readonly problems: readonly StandardsProblem[];
} {
  const [heading = [], ...rows] = papa.parse(csv.replace(/^\uFEFF/, ''), { skipEmptyLines: false }).data;
  const heads = heading.map((head) => head.trim().toLowerCase());
  const missing = COLUMNS.filter((column) => !heads.includes(column));
  if (missing.length > 0) {
    return {
      standards: [],
      problems: missing.map((column) => ({ code: 'standards-column-missing', column })),
    };
  }
  const standards: Standard[] = [];
  const problems: StandardsProblem[] = [];
  rows.forEach((row, at) => {
    if (row.every((field) => field.trim() === '')) return;
    const [code = '', text = '', source = ''] = COLUMNS.map((column) =>
      (row[heads.indexOf(column)] ?? '').trim().slice(0, LONGEST),
    );
    const problem = findSlip({ code, text, source }, standards, at + 2);
    if (problem) problems.push(problem);
    else standards.push({ code: simplifyCode(code), text, source });
  });
  return { standards, problems };
}

function simplifyCode(code: string): string {
  return code
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}

function findSlip(
  { code, text, source }: Standard,
  before: readonly Standard[],
  line: number,
): StandardsProblem | null {
  if (code === '' || text === '' || source === '') return { code: 'standards-line-incomplete', line };
  const simple = simplifyCode(code);
  if (simple === '' || simple.length > 32) return { code: 'standards-code-bad', line, value: code };
  return before.some((other) => other.code === simple)
    ? { code: 'standards-code-twice', line, value: code }
    : null;
}
