import { SHEET_NAMES } from '../../../../renderer/text/english/grade-paper.ts';
import { nameSlipSquad, SLIP, type SlipWords, wordSlip } from '../../../../renderer/text/english/slips.ts';
import type { Plan } from '../../../lesson/plan.ts';
import type { Said } from '../../../printing/said.ts';
import type { PaperSlip, SlipPages } from '../../../printing/slip-pages.ts';
import { BLOCK, type Box, type Layout, type Mark, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';
import { fitList, type ListItem, layOutList } from '../text-list.ts';

/** Slips a page, the most first: all pages of a print have as many, so that a stack of them can be cut at once. */
const SLIPS_A_PAGE = [4, 3, 2, 1] as const;

/** Room above and below a cut, in millimetres. */
const CUT_MARGIN = 4;

const HEAD_HEIGHT = 14;
const TITLE_HEIGHT = 7;
const FOOT_HEIGHT = 6;
const COLUMN_WIDTH = 92;

/** Type of a slip's sentences: pupils read them, so that they do not get small. */
const SENTENCES = type('sans', 13, 10.5, 1.25);

/** A squad has a page of its own, which may be smaller where places have long names. */
const SQUAD_SENTENCES = type('sans', 19, 8, 1.3);

/** Room for each of a squad's two lists at most, in millimetres. */
const SQUAD_LIST_HEIGHT = 78;

/** Slips as pages: one for each squad, or several pupils' on each page with lines to cut along. */
export function layOutSlips(pages: SlipPages, plan: Plan): readonly Layout[] {
  const worded = pages.slips.map((slip) => ({ ...slip, words: wordSlip(plan, slip.slip) }));
  if (pages.kind === 'squad-slips') return worded.map((slip) => layOutSquadSlip(slip, pages));
  const each = SLIPS_A_PAGE.find((count) => worded.every((slip) => isFitting(slip, BLOCK.h / count))) ?? 1;
  return Array.from({ length: Math.ceil(worded.length / each) }, (_, page) => ({
    title: SHEET_NAMES[pages.kind].title,
    marks: [
      ...worded
        .slice(page * each, (page + 1) * each)
        .flatMap((slip, at) => layOutPupilSlip(slip, pages, { at, h: BLOCK.h / each })),
      ...layOutLastCut(worded.length - page * each, each),
    ],
  }));
}

interface WordedSlip extends PaperSlip {
  readonly words: SlipWords;
}

function listItems(slip: WordedSlip, part: 'well' | 'next'): readonly ListItem[] {
  const field = nameField(slip);
  return slip.words[part].map((sentence) => ({
    said: { text: sentence, field },
    sign: part === 'well' ? 'tick' : 'box',
  }));
}

function getListBox(y: number, h: number, part: 'well' | 'next'): Box {
  const top = y + HEAD_HEIGHT + TITLE_HEIGHT;
  return {
    x: part === 'well' ? 0 : BLOCK.w - COLUMN_WIDTH,
    y: top,
    w: COLUMN_WIDTH,
    h: y + h - FOOT_HEIGHT - top,
  };
}

/** A sentence is put together from several fields; what is wrong with it is said of the slip. */
function nameField({ pupil, squad }: PaperSlip): string {
  return `slip of ${pupil ? `${pupil.text}, ` : ''}${squad.name.text}`;
}

function isFitting(slip: WordedSlip, h: number): boolean {
  return (['well', 'next'] as const).every(
    (part) => fitList(getListBox(0, h - 2 * CUT_MARGIN, part), listItems(slip, part), SENTENCES) !== null,
  );
}

function layOutPupilSlip(
  slip: WordedSlip,
  { heading }: SlipPages,
  { at, h }: { readonly at: number; readonly h: number },
): Mark[] {
  const place = { y: at * h + (at === 0 ? 0 : CUT_MARGIN), h: h - 2 * CUT_MARGIN };
  return [
    ...(at === 0 ? [] : [layOutCut(at * h)]),
    ...layOutSlipHead(slip, heading, place.y),
    ...layOutInstead(slip, place),
    ...layOutPart(slip, 'well', place),
    ...layOutPart(slip, 'next', place),
    ...layOutWaiting(slip, { x: 0, y: place.y + place.h - 5, w: BLOCK.w, h: 5 }, 10.5),
  ];
}

/** Under the last slip of a page that is not full. */
function layOutLastCut(slips: number, each: number): Mark[] {
  return slips < each ? [layOutCut((slips * BLOCK.h) / each)] : [];
}

function layOutCut(y: number): Mark {
  return { kind: 'rule', box: { x: 0, y: y - 0.15, w: BLOCK.w, h: 0.3 }, isDashed: true };
}

function layOutSlipHead({ squad, pupil }: WordedSlip, heading: Said, y: number): Mark[] {
  const own = { text: nameSlipSquad(squad.name.text), field: squad.name.field };
  const right = { align: 'right', stand: 'middle' } as const;
  return [
    { kind: 'bib', box: { x: 0, y, w: 9, h: 10.8 }, squad },
    text({ x: 13, y, w: 97, h: 11 }, pupil ?? own, type('serif', 22, 8, 1.1), { stand: 'middle' }),
    text({ x: 112, y, w: 78, h: 5.5 }, own, type('sans-bold', 11, SMALLEST_TYPE.pupil, 1.1), right),
    text({ x: 112, y: y + 5.5, w: 78, h: 5.5 }, heading, type('sans', 10, SMALLEST_TYPE.pupil, 1.1), right),
    rule(0, y + 12, BLOCK.w, 0.5),
  ];
}

type Span = Pick<Box, 'y' | 'h'>;

/** What a pupil reads who was not there. */
function layOutInstead(slip: WordedSlip, { y, h }: Span): Mark[] {
  const { instead } = slip.words;
  if (instead === null) return [];
  const top = HEAD_HEIGHT + 2;
  const box = { x: 0, y: y + top, w: BLOCK.w, h: h - top };
  return [text(box, { text: instead, field: nameField(slip) }, type('sans', 14, 10.5))];
}

function layOutWaiting(slip: WordedSlip, box: Box, size: number): Mark[] {
  const { waiting } = slip.words;
  if (waiting === null) return [];
  return [text(box, { text: waiting, field: nameField(slip) }, type('sans', size, 9), { stand: 'bottom' })];
}

function layOutPart(slip: WordedSlip, part: 'well' | 'next', { y, h }: Span): Mark[] {
  const items = listItems(slip, part);
  if (items.length === 0) return [];
  const box = getListBox(y, h, part);
  const head = { ...box, y: box.y - TITLE_HEIGHT, h: TITLE_HEIGHT - 0.5 };
  return [
    text(head, ours(SLIP[part]), type('serif', 14), { stand: 'middle' }),
    ...layOutList(box, items, SENTENCES),
  ];
}

function layOutSquadSlip(slip: WordedSlip, { heading }: SlipPages): Layout {
  const { squad } = slip;
  const name = { text: nameSlipSquad(squad.name.text), field: squad.name.field };
  let y = 50;
  const parts = (['well', 'next'] as const).flatMap((part): Mark[] => {
    const items = listItems(slip, part);
    if (items.length === 0) return [];
    const box = { x: 0, y: y + 14, w: BLOCK.w, h: SQUAD_LIST_HEIGHT };
    const head = text({ ...box, y, h: 12 }, ours(SLIP[part]), type('serif', 26), { stand: 'middle' });
    const heights = fitList(box, items, SQUAD_SENTENCES)?.heights ?? [];
    y = box.y + heights.reduce((sum, height) => sum + height + 3, 0) + 10;
    return [head, ...layOutList(box, items, SQUAD_SENTENCES)];
  });
  return {
    title: name.text,
    marks: [
      { kind: 'bib', box: { x: 0, y: 1, w: 30, h: 36 }, squad },
      text({ x: 38, y: 0, w: 152, h: 24 }, name, type('serif', 40, 14, 1.1), { stand: 'middle' }),
      text({ x: 38, y: 26, w: 152, h: 9 }, heading, type('sans', 15, SMALLEST_TYPE.pupil), {
        stand: 'middle',
      }),
      rule(0, 42, BLOCK.w, 1.1),
      ...parts,
      ...layOutWaiting(slip, { x: 0, y: 249, w: BLOCK.w, h: 9 }, 14),
    ],
  };
}
