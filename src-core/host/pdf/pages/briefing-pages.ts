import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { Said } from '../../../printing/said.ts';
import type { BriefingSheet } from '../../../printing/teacher-sheets.ts';
import { fitText } from '../fit-text.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';
import { layOutHead, UNDER_HEAD } from './teacher-head.ts';

const COLUMN_WIDTH = 91;
const COLUMN_STEP = 99;
const LOWEST_FOOT = 240;
const WORDS = type('sans', 12, 12, 1.25);
const HEAD_HEIGHT = 9.5;
const GAP = 1.6;

interface Section {
  readonly title: string;
  readonly items: readonly Said[];
}

/** A section whose items know how high they stand, in millimetres. */
interface MeasuredSection {
  readonly title: string;
  readonly items: readonly { readonly item: Said; readonly height: number }[];
}

/** The briefing, read out before class: as many pages as its words take, in one size. */
export function layOutBriefing(sheet: BriefingSheet): readonly Layout[] {
  const columns = balance(
    listSections(sheet).map(({ title, items }) => ({
      title,
      items: items.map((item) => ({ item, height: measure(item) })),
    })),
  );
  const pages: Layout[] = [];
  for (let at = 0; at < columns.length; at += 2) {
    const placed = columns.slice(at, at + 2).flatMap((marks, column) => marks(column * COLUMN_STEP));
    pages.push({
      title: PACK_NAMES.briefing.title,
      marks: [
        ...layOutHead(PACK_NAMES.briefing.title, sheet.heading, sheet.school),
        ...placed,
        rule(0, 243, 190, 0.5),
        text({ x: 0, y: 245, w: 190, h: 14 }, ours(PAPER.policy), type('sans-bold', 11, 9), {
          stand: 'middle',
        }),
      ],
    });
  }
  return pages;
}

function listSections(sheet: BriefingSheet): readonly Section[] {
  const words = sheet.words.map(({ word, meaning }) => ({
    text: PAPER.wordMeaning(word.text, meaning.text),
    field: meaning.field,
  }));
  const atStations = sheet.stationCautions.map(({ place, caution }) => ({
    text: PAPER.stationCaution(place.text, caution.text),
    field: caution.field,
  }));
  return [
    { title: PAPER.objective, items: sheet.objective ? [sheet.objective] : [] },
    { title: PAPER.words, items: words },
    { title: PAPER.rules, items: sheet.rules },
    { title: PAPER.boundaries, items: sheet.boundaries },
    { title: PAPER.cautions, items: [...sheet.cautions, ...atStations] },
    { title: PAPER.usual, items: PAPER.usualList.map(ours) },
  ].filter(({ items }) => items.length > 0);
}

/** Marks of one column, once it is known where it stands. */
type Column = (x: number) => readonly Mark[];

/**
 * Columns of about one length: two short ones where two do, with no section parted if that can be, else as many full
 * ones as it takes.
 */
function balance(sections: readonly MeasuredSection[]): readonly Column[] {
  for (const mayPart of [false, true]) {
    for (let foot = UNDER_HEAD + 60; foot < LOWEST_FOOT; foot += 4) {
      if (!mayPart && sections.some((section) => UNDER_HEAD + measureSection(section) > foot)) continue;
      const columns = flow(sections, foot, mayPart);
      if (columns.length <= 2) return columns;
    }
  }
  return flow(sections, LOWEST_FOOT, false);
}

function measureSection({ items }: MeasuredSection): number {
  return HEAD_HEIGHT + items.reduce((total, { height }) => total + height + GAP, 0);
}

/**
 * Fills column after column; a heading never stays behind without its first item, and stands again over what goes on
 * in another column. A section that does not fit under the one before, but would in a column, is parted only where it
 * may be.
 */
function flow(sections: readonly MeasuredSection[], foot: number, mayPart: boolean): readonly Column[] {
  const columns: ((x: number) => Mark[])[][] = [[]];
  let y = UNDER_HEAD;
  const put = (height: number, marks: (x: number, y: number) => Mark[]) => {
    const at = y;
    columns.at(-1)?.push((x) => marks(x, at));
    y += height;
  };
  const begin = () => {
    columns.push([]);
    y = UNDER_HEAD;
  };
  for (const section of sections) {
    if (!mayPart && isBetterNext(measureSection(section), y, foot)) begin();
    section.items.forEach(({ item, height }, at) => {
      const isOver = y + height + (at === 0 ? HEAD_HEIGHT : 0) > foot;
      if (isOver) begin();
      if (at === 0 || isOver) put(HEAD_HEIGHT, (x, top) => layOutTitle(nameHead(section, at), x, top));
      put(height + GAP, (x, top) => layOutItem(item, { x, y: top, h: height }));
    });
    y += 3;
  }
  return columns.map((parts) => (x) => parts.flatMap((part) => part(x)));
}

function nameHead({ title }: MeasuredSection, at: number): string {
  return at === 0 ? title : PAPER.continued(title);
}

/** Whether a section would be parted where it stands, and not in a column of its own. */
function isBetterNext(height: number, y: number, foot: number): boolean {
  return y > UNDER_HEAD && y + height > foot && UNDER_HEAD + height <= foot;
}

function measure(item: Said): number {
  const fitted = fitText(item.text, { widthMm: COLUMN_WIDTH - 5, heightMm: 1e6 }, WORDS);
  return fitted?.heightMm ?? 0;
}

function layOutTitle(title: string, x: number, y: number): Mark[] {
  return [
    text({ x, y, w: COLUMN_WIDTH, h: 7.5 }, ours(title), type('serif', 15, 15, 1.2)),
    rule(x, y + 7.8, COLUMN_WIDTH, 0.25),
  ];
}

function layOutItem(
  item: Said,
  { x, y, h }: { readonly x: number; readonly y: number; readonly h: number },
): Mark[] {
  return [rule(x, y + 2.6, 2.6, 0.5), text({ x: x + 5, y, w: COLUMN_WIDTH - 5, h: h + 0.01 }, item, WORDS)];
}
