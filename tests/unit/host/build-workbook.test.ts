import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { buildAccountSheet } from '../../../src-core/gradebook/account-sheet.ts';
import { buildGradeSheet } from '../../../src-core/gradebook/grade-sheet.ts';
import { buildWorkbook } from '../../../src-core/host/build-workbook.ts';
import { scoreLesson } from '../../../src-core/marking/points.ts';
import { buildHarbourPlan, buildInput, buildPupil, confirm, decide } from '../marking/harbour.ts';

// The file is taken apart by hand: cells and panes as in ISO/IEC 29500-1 (SpreadsheetML), 18.3.

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

interface ReadCell {
  readonly text: string;
  readonly type: 'n' | 's' | 'formula';
}

function decodeXml(text: string): string {
  return text.replace(/&(lt|gt|quot|apos|amp);/g, (_, name: string) => {
    return { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' }[name] ?? '';
  });
}

async function readWorkbook() {
  const account = buildAccountSheet(plan, score, ACCOUNT);
  const bytes = await buildWorkbook({ marks: buildGradeSheet(plan, score), account, names: ACCOUNT.sheets });
  const parts = unzipSync(bytes);
  const read = (name: string) => strFromU8(parts[name] ?? new Uint8Array());
  const shared = [...read('xl/sharedStrings.xml').matchAll(/<si>.*?<t[^>]*>([\s\S]*?)<\/t>.*?<\/si>/g)].map(
    ([, text = '']) => decodeXml(text),
  );
  const readCell = (attributes: string, body: string): ReadCell => {
    const value = /<v>([\s\S]*?)<\/v>/.exec(body)?.[1] ?? '';
    if (body.includes('<f>')) return { text: value, type: 'formula' };
    if (attributes.includes('t="s"')) return { text: shared[Number(value)] ?? '', type: 's' };
    return { text: value, type: 'n' };
  };
  const sheets = ['xl/worksheets/sheet1.xml', 'xl/worksheets/sheet2.xml'].map((name) => {
    const xml = read(name);
    const rows = [...xml.matchAll(/<row[^>]*>([\s\S]*?)<\/row>/g)].map(([, row = '']) =>
      [...row.matchAll(/<c ([^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g)].map(([, attributes = '', body = '']) =>
        readCell(attributes, body),
      ),
    );
    return { xml, rows };
  });
  return {
    names: [...read('xl/workbook.xml').matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(([, n]) => n),
    sheets,
  };
}

describe('the workbook', () => {
  test('has the marks and where they came from, each with heads that stay in sight', async () => {
    const { names, sheets } = await readWorkbook();
    expect(names).toEqual(['Marks', 'Where points came from']);
    for (const { xml } of sheets) expect(xml).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
  });

  test('keeps numbers as numbers and ids as text, leading noughts included', async () => {
    const [marks] = (await readWorkbook()).sheets;
    const row = marks?.rows[1] ?? [];
    expect(row[0]).toEqual({ text: '0412', type: 's' });
    expect(row.find(({ text }) => text === '8')?.type).toBe('n');
  });

  test('has no formula, not even in a name that begins like one', async () => {
    const { sheets } = await readWorkbook();
    const cells = sheets.flatMap(({ rows }) => rows.flat());
    expect(cells.filter(({ type }) => type === 'formula')).toEqual([]);
    expect(cells).toContainEqual({ text: '=1+1, Odda', type: 's' });
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
