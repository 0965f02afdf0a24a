import {
  GRADES,
  wordCriteria,
  wordMarks,
  wordPupil,
  wordRule,
} from '../../../../renderer/text/english/grade-paper.ts';
import { points, SCORES } from '../../../../renderer/text/english/scores.ts';
import type { Names } from '../../../../renderer/text/names.ts';
import type { Plan } from '../../../lesson/plan.ts';
import type { PupilLine, SquadGrades } from '../../../printing/grade-pages.ts';
import { measureHeight } from '../fit-text.ts';
import { type Block, flowPages, type Section } from '../flow.ts';
import { BLOCK, type Layout, type Mark, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';
import type { ClipPictures } from '../retouch-stills.ts';
import { listFlags } from './flag-list.ts';
import { GRADES_BOTTOM, GRADES_TOP, layOutGradeFoot, layOutGradeHead } from './grade-head.ts';
import { buildRowBlock, getColumns } from './grade-row.ts';
import { buildRouteThreads } from './route-thread.ts';
import { buildSignature } from './signature.ts';

/** What the pages of squads need beside what stands in them. */
export interface GradeStyle {
  readonly plan: Plan;
  readonly names: Names;
  readonly pictures: ReadonlyMap<string, ClipPictures>;
}

/** Sizes of stills, the largest first; smaller ones where that spares a page. */
const SCALES = [1.3, 1.1, 1, 0.9, 0.8, 0.72, 0.65] as const;

const FRAME = { top: GRADES_TOP, bottom: GRADES_BOTTOM };

/** The page of one squad, or as many as it takes. */
export function layOutSquadGrades(page: SquadGrades, style: GradeStyle): readonly Layout[] {
  const tries = SCALES.map((scale) => flowPages(listSections(page, { ...style, scale }), FRAME));
  const fewest = Math.min(...tries.map((pages) => pages.length));
  const pages = tries.find(({ length }) => length === fewest) ?? [];
  const of = page.squad.name.text;
  return pages.map((marks, at) => ({
    title: of,
    marks: [
      ...layOutGradeHead(page.head, page.squad),
      ...marks,
      ...layOutGradeFoot(of, at + 1, pages.length),
    ],
  }));
}

function listSections(page: SquadGrades, style: GradeStyle & { readonly scale: number }): readonly Section[] {
  const { plan, names, pictures, scale } = style;
  const row = { plan, pictures, scale, isListTold: page.isOnList };
  return [
    { head: buildRowsHead(page), blocks: page.rows.map((one) => buildRowBlock(one, row)) },
    ...listBottom(page, plan),
    { head: page.flags.length === 0 ? null : buildTitle(GRADES.flags), blocks: listFlags(page, names) },
    { head: null, blocks: [buildSignature(listFootnotes(page))] },
  ];
}

function listFootnotes({ isOnList, stills, orderRule }: SquadGrades): readonly string[] {
  const looks = { shown: [], blurred: [GRADES.blurred], 'left-out': [GRADES.leftOut] };
  return [GRADES.boxes, wordRule(orderRule), ...(isOnList ? [] : looks[stills])];
}

function buildTitle(title: string): Block {
  return {
    h: 9,
    lay: (y) => [
      text({ x: 0, y: y + 1, w: BLOCK.w, h: 7 }, ours(title), type('serif', 12), { stand: 'middle' }),
      rule(0, y + 8.4, BLOCK.w, 0.3),
    ],
  };
}

const HEADS = type('sans-bold', 8, 6, 1.1);
const LEGEND = type('sans', 8, 6, 1.15);

function buildRowsHead({ criteria, rows, isOnList }: SquadGrades): Block {
  const columns = getColumns(criteria.length);
  const legend = {
    text: wordCriteria(criteria.map(({ text: label }) => label)),
    field: criteria[0]?.field ?? '',
  };
  const legendHeight = measureHeight(legend.text, BLOCK.w, LEGEND, 3);
  const hasStills = !isOnList && rows.some(({ strip }) => strip !== null && strip.look !== 'none');
  const caution = isOnList ? measureHeight(GRADES.onList, BLOCK.w, HEADS) + 1 : 0;
  return {
    h: legendHeight + caution + 7.5,
    lay: (y) => {
      const top = y + caution + legendHeight;
      const bottom = { stand: 'bottom' } as const;
      return [
        ...(isOnList ? [text({ x: 0, y, w: BLOCK.w, h: caution }, ours(GRADES.onList), HEADS)] : []),
        text({ x: 0, y: y + caution, w: BLOCK.w, h: legendHeight }, legend, LEGEND),
        text({ x: 0, y: top, w: 42, h: 6 }, ours(GRADES.stations), HEADS, bottom),
        text(
          { x: columns.stills, y: top, w: columns.stillsWidth, h: 6 },
          ours(hasStills ? GRADES.stills : GRADES.noStills),
          HEADS,
          bottom,
        ),
        ...criteria.map((_, at) =>
          text(
            { x: columns.boxes + at * columns.pitch, y: top, w: columns.pitch, h: 6 },
            ours(String(at + 1)),
            HEADS,
            { align: 'centre', stand: 'bottom' },
          ),
        ),
        text({ x: columns.points - 2, y: top, w: 12, h: 6 }, ours(GRADES.points), HEADS, {
          align: 'right',
          stand: 'bottom',
        }),
        rule(0, top + 6.8, BLOCK.w, 0.4),
      ];
    },
  };
}

const TABLE_X = 64;
const TABLE_WIDTH = BLOCK.w - TABLE_X;
const MARK_COLUMNS = { points: 152, percent: 167, scale: 178 } as const;
const NAME_WIDTH = MARK_COLUMNS.points - TABLE_X - 2;

/** Route and walk at the left, the squad's marks and its pupils' at the right; one after the other where no page takes both. */
function listBottom(page: SquadGrades, plan: Plan): readonly Section[] {
  const [threads, ...more] = buildRouteThreads(page.walk, plan);
  const head = buildTableHead(page);
  const pupils = page.pupils.map(buildPupilBlock);
  const table = [head, ...pupils];
  const h = table.reduce((sum, block) => sum + block.h, 0) + 3;
  if (!threads || more.length > 0 || Math.max(threads.h + 3, h) > FRAME.bottom - FRAME.top)
    return [
      { head: null, blocks: [...(threads ? [threads] : []), ...more] },
      { head, blocks: pupils },
    ];
  return [{ head: null, blocks: [standBeside(threads, table)] }];
}

function standBeside(threads: Block, table: readonly Block[]): Block {
  const h = table.reduce((sum, block) => sum + block.h, 0);
  return {
    h: Math.max(threads.h, h) + 3,
    lay: (y) => {
      let top = y + 2;
      return [
        rule(0, y + 0.4, BLOCK.w, 0.8),
        ...threads.lay(y + 2),
        ...table.flatMap((block) => {
          const marks = block.lay(top);
          top += block.h;
          return marks;
        }),
      ];
    },
  };
}

function buildTableHead(page: SquadGrades): Block {
  const marks = { text: wordMarks(page), field: page.marks[0]?.label.field ?? '' };
  const h = measureHeight(marks.text, TABLE_WIDTH, HEADS, 3);
  const bottom = { align: 'right', stand: 'bottom' } as const;
  return {
    h: h + 7,
    lay: (y) => [
      text({ x: TABLE_X, y, w: TABLE_WIDTH, h }, marks, HEADS),
      text({ x: TABLE_X, y: y + h, w: NAME_WIDTH, h: 5.5 }, ours(GRADES.pupil), HEADS, { stand: 'bottom' }),
      text({ x: MARK_COLUMNS.points, y: y + h, w: 14, h: 5.5 }, ours(GRADES.points), HEADS, bottom),
      text({ x: MARK_COLUMNS.percent, y: y + h, w: 10, h: 5.5 }, ours(GRADES.percent), HEADS, bottom),
      text({ x: MARK_COLUMNS.scale, y: y + h, w: 12, h: 5.5 }, ours(GRADES.scale), HEADS, bottom),
      rule(TABLE_X, y + h + 6.2, TABLE_WIDTH, 0.4),
    ],
  };
}

const NAME = type('sans-bold', 9, SMALLEST_TYPE.teacher, 1.1);
const REMARK = type('sans', 8, SMALLEST_TYPE.teacher, 1.15);

function buildPupilBlock({ name, score }: PupilLine): Block {
  const remark = { text: wordPupil(score), field: name.field };
  const remarkHeight = measureHeight(remark.text, NAME_WIDTH, REMARK);
  const nameHeight = Math.max(4, measureHeight(name.text, NAME_WIDTH, NAME, 1));
  return {
    h: nameHeight + remarkHeight + 0.7,
    lay: (y) => [
      text({ x: TABLE_X, y, w: NAME_WIDTH, h: nameHeight }, name, NAME, { stand: 'middle' }),
      ...(remarkHeight > 0
        ? [text({ x: TABLE_X, y: y + nameHeight, w: NAME_WIDTH, h: remarkHeight }, remark, REMARK)]
        : []),
      ...layOutMark(score, { y, h: nameHeight }),
      rule(TABLE_X, y + nameHeight + remarkHeight + 0.5, TABLE_WIDTH, 0.12),
    ],
  };
}

/** Points, per cent and scale at the right of a line; in italics where nobody stands behind them yet. */
function layOutMark(
  { sum, percent, scale, state }: PupilLine['score'],
  { y, h }: { readonly y: number; readonly h: number },
): Mark[] {
  if (!sum) return [];
  const setting = type(state === 'confirmed' ? 'sans' : 'serif-italic', 9, SMALLEST_TYPE.teacher, 1.1);
  const right = { align: 'right', stand: 'middle' } as const;
  return [
    text({ x: MARK_COLUMNS.points, y, w: 14, h }, ours(SCORES.sumOf(sum.points, sum.max)), setting, right),
    text(
      { x: MARK_COLUMNS.percent, y, w: 10, h },
      ours(percent === null ? '–' : points(percent)),
      setting,
      right,
    ),
    ...(scale === null
      ? []
      : [text({ x: MARK_COLUMNS.scale, y, w: 12, h }, { text: scale, field: 'scale' }, setting, right)]),
  ];
}
