import { strFromU8, unzipSync } from 'fflate';
import readExcelFile from 'read-excel-file/node';
import { describe, expect, test } from 'vitest';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { buildAccountSheet } from '../../../src-core/gradebook/account-sheet.ts';
import { buildGradeSheet } from '../../../src-core/gradebook/grade-sheet.ts';
import { buildWorkbook } from '../../../src-core/host/build-workbook.ts';
import { scoreLesson } from '../../../src-core/marking/points.ts';
import { buildHarbourPlan, buildInput, buildPupil, confirm, decide } from '../marking/harbour.ts';

// Read by read-excel-file, another library than the one that writes it; panes and formulas are looked for in the parts
// themselves, as in ISO/IEC 29500-1 (SpreadsheetML), 18.3.

const plan = buildHarbourPlan();
const score = scoreLesson(
  buildInput({
    pupils: [
      buildPupil('0412', { family: '=1+1' }),
      buildPupil('k-0415', { attendance: 'absent' }),
      buildPupil('k-0417'),
    ],
    decisions: decide(confirm('clip-C'), {
      kind: 'points-overridden',
      of: { type: 'pupil', pupil: 'k-0417' },
      change: { type: 'by', points: -1 },
      reason: 'left the mats out',
    }),
  }),
);

async function readWorkbook() {
  const account = buildAccountSheet(plan, score, ACCOUNT);
  const bytes = await buildWorkbook({ marks: buildGradeSheet(plan, score), account, names: ACCOUNT.sheets });
  const sheets = await readExcelFile(Buffer.from(bytes));
  const parts = Object.entries(unzipSync(bytes)).filter(([name]) => name.startsWith('xl/worksheets/sheet'));
  return { sheets, written: parts.map(([, part]) => strFromU8(part)) };
}

describe('the workbook', () => {
  test('has the marks and where they came from, each with heads that stay in sight', async () => {
    const { sheets, written } = await readWorkbook();
    expect(sheets.map(({ sheet }) => sheet)).toEqual(['Marks', 'Where points came from']);
    expect(written).toHaveLength(2);
    for (const xml of written) expect(xml).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
  });

  test('keeps numbers as numbers and ids as text, leading noughts included', async () => {
    const [marks] = (await readWorkbook()).sheets;
    const { columns, rows } = buildGradeSheet(plan, score);
    const asRead = (row: readonly (string | number | null)[]) =>
      row.map((cell) => (cell === '' ? null : cell));
    expect(marks?.data).toEqual([columns.map(({ head }) => head), ...rows.map(asRead)]);
    expect(marks?.data[1]).toEqual(expect.arrayContaining(['0412', 8]));
  });

  test('has no formula, not even in a name that begins like one', async () => {
    const { sheets, written } = await readWorkbook();
    for (const xml of written) expect(xml).not.toMatch(/<f[ >]/);
    expect(sheets.flatMap(({ data }) => data.flat())).toContain('=1+1, Odda');
  });

  test('gives for each pupil parts that add up to the pupil’s points, changes by hand among them', async () => {
    const account = buildAccountSheet(plan, score, ACCOUNT);
    for (const { pupil, sum } of score.pupils) {
      const own = account.rows.filter(({ cells }) => cells[0] === pupil.id);
      const total = own.reduce((points, { cells }) => points + Number(cells[5] ?? 0), 0);
      expect(total).toBeCloseTo(sum?.points ?? 0, 9);
    }
    const hand = account.rows.find(({ cells }) => cells[4] === 'Changed by hand');
    expect(hand?.cells.slice(5)).toEqual([-1, null, 'yes', '−1 for the pupil by hand: left the mats out']);
  });

  test('says why a pupil has no mark, and which parts are nobody’s word yet', async () => {
    const account = buildAccountSheet(plan, score, ACCOUNT);
    expect(account.rows.find(({ cells }) => cells[0] === 'k-0415')?.cells.at(-1)).toBe('absent: no mark');
    const slots = account.rows.filter(({ cells }) => cells[0] === '0412' && cells[3] !== null);
    expect(slots.map(({ isPencilled }) => isPencilled)).toEqual([false, ...Array(6).fill(true)]);
    expect(slots.map(({ cells }) => cells.at(-1))).toContain('G lost to the order rule');
  });
});
