import { describe, expect, test } from 'vitest';
import { GRADES } from '../../../renderer/text/english/grade-paper.ts';
import { draftPaper } from '../../../src-core/app/print-sheet.ts';
import { type Layout, type Mark, SMALLEST_TYPE } from '../../../src-core/host/pdf/marks.ts';
import { layOutClassGrades } from '../../../src-core/host/pdf/pages/class-grade-pages.ts';
import { GRADES_BOTTOM } from '../../../src-core/host/pdf/pages/grade-head.ts';
import { layOutSlips } from '../../../src-core/host/pdf/pages/slip-pages.ts';
import { layOutSquadGrades } from '../../../src-core/host/pdf/pages/squad-grade-pages.ts';
import { readSheetStills } from '../../../src-core/host/pdf/sheet-stills.ts';
import type { SquadGrades } from '../../../src-core/printing/grade-pages.ts';
import type { SheetKind } from '../../../src-core/printing/sheet-order.ts';
import { CLEAN, grade } from '../app/small-clips.ts';

const graded = grade(CLEAN);
const { plan } = graded.lesson;
const names = {
  squad: (code: string) => code,
  station: (code: string) => code,
  planPlace: () => '',
  clip: (id: string) => id,
  time: String,
};

function draft(kind: SheetKind) {
  const order = { kind, paper: 'a4', isGrey: false, stills: 'shown' } as const;
  const { pages } = draftPaper(graded, order, { evenWithOpenFlags: true });
  if (pages === null) throw new Error('no pages');
  return pages;
}

function draftGrades() {
  const pages = draft('grade-sheet');
  if (!('classPage' in pages)) throw new Error('no grade sheet');
  return pages;
}

const layOutSquad = (page: SquadGrades) => layOutSquadGrades(page, { plan, names, pictures: new Map() });

const textsOf = (layouts: readonly Layout[]) =>
  layouts.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'text'));

/** The lowest edge of what stands between head and foot, threads included. */
function findLowest(marks: readonly Mark[]): number {
  const inner = marks.filter(({ box }) => box.y < GRADES_BOTTOM);
  return Math.max(
    ...inner.map(
      (mark) => mark.box.y + (mark.kind === 'thread' ? Math.max(mark.fromMm, mark.toMm) : mark.box.h),
    ),
  );
}

describe('a squad’s page', () => {
  const [page] = draftGrades().squads;
  if (!page) throw new Error('no squad');
  const [stop, walked, pupil] = [page.walk.expected[0], page.walk.walked[0], page.pupils[0]];
  if (!stop || !walked || !pupil) throw new Error('nothing to repeat');
  const repeat = <Item>(times: number, make: (at: number) => Item) =>
    Array.from({ length: times }, (_, at) => make(at));

  test.each([
    ['many clips', 130, 8],
    ['many pupils with remarks', 6, 90],
    ['both', 52, 60],
  ])('of %s goes on on another instead of off this one', (_, clips, pupils) => {
    const layouts = layOutSquad({
      ...page,
      walk: {
        expected: repeat(clips, () => stop),
        // The last filmed first: every thread would be as long as the walk.
        walked: repeat(clips, (at) => ({ ...walked, slot: clips - 1 - at })),
      },
      pupils: repeat(pupils, (at) => ({ ...pupil, name: { text: `Pupil ${at}`, field: 'roster.csv' } })),
    });
    expect(layouts.length).toBeGreaterThan(1);
    for (const { marks } of layouts) expect(findLowest(marks)).toBeLessThanOrEqual(GRADES_BOTTOM + 0.01);
    const said = textsOf(layouts).map(({ said: { text } }) => text);
    for (let at = 0; at < pupils; at += 1) expect(said).toContain(`Pupil ${at}`);
    expect(said).toContain(String(clips));
  });

  test('of a usual squad has route and pupils side by side on one page', () => {
    expect(layOutSquad(page)).toHaveLength(1);
  });
});

test('the squads’ own marks are headed by their criteria, or by a word of ours where these find no room', () => {
  const { classPage } = draftGrades();
  const headOf = (labels: readonly string[]) => {
    const criteria = labels.map((label) => ({ text: label, field: '' }));
    return textsOf(layOutClassGrades({ ...classPage, criteria })).map(({ said }) => said.text);
  };
  expect(headOf(['Care of kit', 'Teamwork'])).toContain('Care of kit, Teamwork');
  expect(headOf(['Care of everything that was carried', 'Teamwork'])).toContain(GRADES.squadMarks);
  expect(headOf([])).toContain(GRADES.squadMarks);
});

test('no type on a sheet is too small to be read, a child’s least of all', () => {
  const { classPage, squads } = draftGrades();
  const sheets = [...layOutClassGrades(classPage), ...squads.flatMap(layOutSquad)];
  const least = (layouts: readonly Layout[]) =>
    Math.min(...textsOf(layouts).map(({ setting }) => setting.smallest));
  expect(least(sheets)).toBeGreaterThanOrEqual(SMALLEST_TYPE.teacher);
  for (const kind of ['squad-slips', 'pupil-slips'] as const) {
    const pages = draft(kind);
    if ('classPage' in pages) throw new Error('no slips');
    expect(least(layOutSlips(pages, plan))).toBeGreaterThanOrEqual(SMALLEST_TYPE.pupil);
  }
});

test('a kept still that is damaged is told as missing, and the rest is printed', async () => {
  const { squads } = draftGrades();
  const [page] = squads;
  const [row] = page?.rows ?? [];
  if (!page || !row) throw new Error('no line');
  const strip = { look: 'shown', clip: 'tA', stills: [{ atSeconds: 1, number: 1 }] } as never;
  const source = {
    findFile: () => null,
    readStrip: async () => [{ shownSeconds: 1, jpeg: new Uint8Array([0xff, 0xd8, 1, 2, 3]) }] as never,
  };
  const job = { signal: new AbortController().signal, onProgress: () => {} };
  const found = await readSheetStills(
    [{ ...page, rows: [{ ...row, strip }] }],
    { source, isGrey: false },
    job,
  );
  expect(found.problems).toEqual([{ code: 'print-stills-missing', clip: 'tA' }]);
});
