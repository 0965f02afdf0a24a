import { GRADES, wordFlagCount, wordRule } from '../../../../renderer/text/english/grade-paper.ts';
import { points, SCORES } from '../../../../renderer/text/english/scores.ts';
import type { ClassGrades, ClassLine, PupilLine } from '../../../printing/grade-pages.ts';
import type { RouteWalk } from '../../../printing/route-walk.ts';
import { fitText, measureHeight } from '../fit-text.ts';
import { type Block, flowPages, type Section } from '../flow.ts';
import { BLOCK, type Box, type Layout, type Mark, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';
import { GRADES_BOTTOM, GRADES_TOP, layOutGradeFoot, layOutGradeHead } from './grade-head.ts';
import { buildSignature } from './signature.ts';

const WALK = { x: 44, w: 74 } as const;
/** Right edges of the squads' marks. */
const EDGES = { clips: 131, squad: 153, points: 168, percent: 178, scale: 190 } as const;
const SIDE = 4.2;

const HEADS = type('sans-bold', 8, 6, 1.1);

/** What the squads' own criteria are called over their column, where that finds room there. */
const SQUAD_HEAD = { w: 20, h: 6 } as const;

/** The class page, or as many as it takes: squads with route and walk, then all pupils as the roster has them. */
export function layOutClassGrades(page: ClassGrades): readonly Layout[] {
  const pages = flowPages(listSections(page), { top: GRADES_TOP, bottom: GRADES_BOTTOM });
  return pages.map((marks, at) => ({
    title: GRADES.title,
    marks: [
      ...layOutGradeHead(page.head, null),
      ...marks,
      ...layOutGradeFoot(page.head.lesson.text, at + 1, pages.length),
    ],
  }));
}

function listSections({ squads, pupils, criteria, orderRule }: ClassGrades): readonly Section[] {
  return [
    { head: buildSquadsHead(criteria), blocks: squads.map(buildSquadBlock) },
    { head: buildPupilsHead(), blocks: buildPupilBlocks(pupils) },
    { head: null, blocks: [buildSignature([GRADES.walkLegend, GRADES.inItalics, wordRule(orderRule)])] },
  ];
}

function atEdge(edge: number, w: number): { readonly x: number; readonly w: number } {
  return { x: edge - w, w };
}

function buildSquadsHead(criteria: ClassGrades['criteria']): Block {
  const labels = criteria.map((label) => label.text).join(', ');
  const room = { widthMm: SQUAD_HEAD.w, heightMm: SQUAD_HEAD.h };
  const ownMarks = labels !== '' && fitText(labels, room, HEADS) ? labels : GRADES.squadMarks;
  const right = { align: 'right', stand: 'bottom' } as const;
  return {
    h: 7.5,
    lay: (y) => [
      text({ x: 0, y, w: 42, h: 6 }, ours(GRADES.squads), HEADS, { stand: 'bottom' }),
      text({ x: WALK.x, y, w: WALK.w, h: 6 }, ours(GRADES.walkHead), HEADS, { stand: 'bottom' }),
      text({ ...atEdge(EDGES.clips, 12), y, h: 6 }, ours(GRADES.clips), HEADS, right),
      text({ ...atEdge(EDGES.squad, SQUAD_HEAD.w), y, h: SQUAD_HEAD.h }, ours(ownMarks), HEADS, right),
      text({ ...atEdge(EDGES.points, 14), y, h: 6 }, ours(GRADES.points), HEADS, right),
      text({ ...atEdge(EDGES.percent, 9), y, h: 6 }, ours(GRADES.percent), HEADS, right),
      text({ ...atEdge(EDGES.scale, 11), y, h: 6 }, ours(GRADES.scale), HEADS, right),
      rule(0, y + 6.8, BLOCK.w, 0.4),
    ],
  };
}

function buildSquadBlock(line: ClassLine): Block {
  const walk = buildWalk(line.walk);
  const inner = Math.max(10.5, walk.h);
  return {
    h: inner + 2.4,
    lay: (y) => {
      const top = y + 1.2;
      const middle = top + (inner - 10.5) / 2;
      return [
        { kind: 'bib', box: { x: 0, y: middle + 1, w: 7, h: 8.4 }, squad: line.squad },
        text(
          { x: 9, y: middle, w: 33, h: 6.2 },
          line.squad.name,
          type('serif', 12, SMALLEST_TYPE.teacher, 1.1),
          {
            stand: 'middle',
          },
        ),
        text(
          { x: 9, y: middle + 6.2, w: 33, h: 4 },
          ours(wordFlagCount(line.flags)),
          type('sans', 8, 6, 1.1),
        ),
        ...walk.lay(top + (inner - walk.h) / 2),
        ...layOutSquadMarks(line, { y: middle, h: 10.5 }),
        rule(0, y + inner + 2.3, BLOCK.w, 0.12),
      ];
    },
  };
}

function layOutSquadMarks({ score }: ClassLine, box: { readonly y: number; readonly h: number }): Mark[] {
  const { sum, percent, scale, criteria, slots } = score;
  const isInk =
    criteria.every(({ decided }) => decided !== null) && slots.every(({ clip }) => clip?.confirmed !== false);
  const setting = type(isInk ? 'sans' : 'serif-italic', 10, SMALLEST_TYPE.teacher, 1.1);
  const right = { align: 'right', stand: 'middle' } as const;
  const squadPoints = criteria.reduce((total, { decided }) => total + (decided ?? 0), 0);
  return [
    text({ ...atEdge(EDGES.clips, 12), ...box }, ours(points(sum.clipPoints)), setting, right),
    text(
      { ...atEdge(EDGES.squad, 12), ...box },
      ours(criteria.length > 0 ? points(squadPoints) : '–'),
      setting,
      right,
    ),
    text({ ...atEdge(EDGES.points, 14), ...box }, ours(SCORES.sumOf(sum.points, sum.max)), setting, right),
    text(
      { ...atEdge(EDGES.percent, 9), ...box },
      ours(percent === null ? '–' : points(percent)),
      setting,
      right,
    ),
    ...(scale === null
      ? []
      : [text({ ...atEdge(EDGES.scale, 11), ...box }, { text: scale, field: 'scale' }, setting, right)]),
  ];
}

/** The route in framed letters; under it the clips in the order filmed. */
function buildWalk({ expected, walked }: RouteWalk): Block {
  const isLong = [...expected, ...walked].some(({ station }) => (station ?? '').length > 1);
  const step = isLong ? 7.4 : 5.4;
  const across = Math.floor(WALK.w / step);
  const lines = Math.max(1, Math.ceil(Math.max(expected.length, walked.length) / across));
  const lineHeight = 2 * SIDE + 1;
  const place = (at: number, y: number, under: number) => ({
    x: WALK.x + (at % across) * step,
    y: y + Math.floor(at / across) * (lineHeight + 1) + under,
    w: step - 1,
    h: SIDE,
  });
  const letter = (code: string, box: ReturnType<typeof place>) =>
    text(box, ours(code), type('serif', 9.5, SMALLEST_TYPE.teacher), { align: 'centre', stand: 'middle' });
  return {
    h: lines * (lineHeight + 1) - 1,
    lay: (y) => [
      ...expected.flatMap(({ station, hasClip }, at): Mark[] => {
        const box = place(at, y, 0);
        return [{ kind: 'frame', box, lineMm: 0.25, cutMm: 0, isDashed: !hasClip }, letter(station, box)];
      }),
      ...walked.flatMap(({ station, slot, isBroken }, at): Mark[] => {
        const box = place(at, y, SIDE + 1);
        const code = station ?? GRADES.unknownStation;
        if (isBroken) return [{ kind: 'plate', box, letter: code, cutMm: 0 }];
        if (slot !== null) return [letter(code, box)];
        return [{ kind: 'frame', box, lineMm: 0.2, cutMm: 0, isDashed: true }, letter(code, box)];
      }),
    ],
  };
}

/** The pupils' table stands in two halves side by side, read down the left one first. */
const HALF = 92;
const HALF_GAP = BLOCK.w - 2 * HALF;
const ROW = 4.9;
const PUPIL_EDGES = { points: 74, percent: 81, scale: HALF } as const;

function buildPupilsHead(): Block {
  const right = { align: 'right', stand: 'bottom' } as const;
  return {
    h: 9,
    lay: (y) =>
      [0, HALF + HALF_GAP].flatMap((x): Mark[] => [
        text({ x, y, w: 34, h: 7.5 }, ours(GRADES.pupil), HEADS, { stand: 'bottom' }),
        text({ x: x + 36, y, w: 22, h: 7.5 }, ours(GRADES.squad), HEADS, { stand: 'bottom' }),
        text({ x: x + PUPIL_EDGES.points - 14, y, w: 14, h: 7.5 }, ours(GRADES.points), HEADS, right),
        text({ x: x + PUPIL_EDGES.percent - 6, y, w: 6, h: 7.5 }, ours(GRADES.percent), HEADS, right),
        text({ x: x + PUPIL_EDGES.scale - 10, y, w: 10, h: 7.5 }, ours(GRADES.scale), HEADS, right),
        rule(x, y + 8.2, HALF, 0.4),
      ]),
  };
}

/** A block a line of the table, with one pupil of each half. */
function buildPupilBlocks(pupils: readonly PupilLine[]): readonly Block[] {
  const lines = Math.ceil(pupils.length / 2);
  return Array.from({ length: lines }, (_, at): Block => {
    const pair = [pupils[at], pupils[at + lines]];
    const h = Math.max(ROW, ...pair.map((line) => (line ? measurePupil(line) : 0)));
    return {
      h,
      lay: (y) =>
        pair.flatMap((line, half) =>
          line ? layOutPupil(line, { x: half * (HALF + HALF_GAP), y, w: HALF, h }) : [],
        ),
    };
  });
}

const NAME = type('sans-bold', 9, SMALLEST_TYPE.teacher, 1.05);
const SQUAD = type('sans', 8.5, SMALLEST_TYPE.teacher, 1.05);
const NAME_WIDTH = 35;
const SQUAD_WIDTH = 22;

function measurePupil({ name, squad }: PupilLine): number {
  return (
    Math.max(measureHeight(name.text, NAME_WIDTH, NAME), measureHeight(squad.text, SQUAD_WIDTH, SQUAD)) + 0.3
  );
}

function layOutPupil({ name, squad, score }: PupilLine, box: Box): Mark[] {
  const { sum, percent, scale, state } = score;
  const { x, y } = box;
  const h = box.h - 0.3;
  const middle = { stand: 'middle' } as const;
  const right = { align: 'right', stand: 'middle' } as const;
  const setting = type(state === 'confirmed' ? 'sans' : 'serif-italic', 9, SMALLEST_TYPE.teacher, 1.05);
  const why = state === 'absent' || state === 'excused' ? GRADES.noMark[state] : SCORES.none;
  const marks = sum
    ? [
        text(
          { x: x + PUPIL_EDGES.points - 15, y, w: 15, h },
          ours(SCORES.sumOf(sum.points, sum.max)),
          setting,
          right,
        ),
        text(
          { x: x + PUPIL_EDGES.percent - 6, y, w: 6, h },
          ours(percent === null ? '–' : points(percent)),
          setting,
          right,
        ),
        ...(scale === null
          ? []
          : [
              text(
                { x: x + PUPIL_EDGES.scale - 10, y, w: 10, h },
                { text: scale, field: 'scale' },
                setting,
                right,
              ),
            ]),
      ]
    : [text({ x: x + PUPIL_EDGES.points - 15, y, w: 15, h }, ours(why), type('sans', 8, 6, 1.05), right)];
  return [
    text({ x, y, w: NAME_WIDTH, h }, name, NAME, middle),
    text({ x: x + 36, y, w: SQUAD_WIDTH, h }, squad, SQUAD, middle),
    ...marks,
    rule(x, y + box.h - 0.2, HALF, 0.12),
  ];
}
