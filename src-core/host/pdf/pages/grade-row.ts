import { GRADES, wordRow, wordTime } from '../../../../renderer/text/english/grade-paper.ts';
import { points } from '../../../../renderer/text/english/scores.ts';
import type { Plan } from '../../../lesson/plan.ts';
import type { GradeRow, PaperAnswer } from '../../../printing/grade-rows.ts';
import type { Said } from '../../../printing/said.ts';
import { measureHeight } from '../fit-text.ts';
import type { Block } from '../flow.ts';
import { BLOCK, type Box, type Mark, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';
import type { ClipPictures } from '../retouch-stills.ts';

/** How the lines of one squad's page are laid out. */
export interface RowStyle {
  readonly plan: Plan;
  /** Pictures of a line's stills, in their order; null where one could not be made. */
  readonly pictures: ReadonlyMap<string, ClipPictures>;
  /** Of the stills, from 1 down. */
  readonly scale: number;
  /** The page says itself that the squad is on the do-not-film list. */
  readonly isListTold: boolean;
}

/** Columns of a line in millimetres; the stills take what the boxes leave. */
export function getColumns(criteria: number) {
  const pitch = Math.min(6.5, 36 / criteria);
  const boxes = BLOCK.w - 11 - criteria * pitch;
  return { pitch, boxes, points: BLOCK.w - 10, stills: 43, stillsWidth: boxes - 3 - 43 };
}

const ID_WIDTH = 31;
const PLATE = 8;
const GAP = 0.7;
const PADDING = 0.8;

/** A still of a film held upright or flat has this area at full scale, in square millimetres. */
const STILL_AREA = 96;

const PLACE = type('serif', 10, 5.5, 1.1);
const SMALL = type('sans', 7.5, SMALLEST_TYPE.teacher, 1.15);
const NOTE = type('sans', 8, 6, 1.2);

/** One line of a squad's page. */
export function buildRowBlock(row: GradeRow, style: RowStyle): Block {
  const columns = getColumns(style.plan.rubric.clip.length);
  const said = listIdentity(row, style.plan);
  const idHeight = said.reduce((sum, { h }) => sum + h, 0);
  const stills = layOutStills(row, style, columns.stillsWidth);
  const note = wordRow(row, style.isListTold);
  const noteHeight = measureHeight(note, columns.stillsWidth, NOTE, 3);
  const gap = stills.h > 0 && noteHeight > 0 ? 0.8 : 0;
  const inner = Math.max(PLATE, idHeight, stills.h + gap + noteHeight);
  const h = inner + 2 * PADDING;
  return {
    h,
    lay: (y) => {
      const top = y + PADDING;
      const left = top + (inner - stills.h - gap - noteHeight) / 2;
      return [
        rule(0, y - 0.08, BLOCK.w, 0.15),
        ...layOutIdentity(row, said, {
          y: top + (inner - Math.max(idHeight, PLATE)) / 2,
          h: Math.max(idHeight, PLATE),
        }),
        ...stills.lay({ x: columns.stills, y: left }),
        ...(noteHeight > 0
          ? [
              text(
                { x: columns.stills, y: left + stills.h + gap, w: columns.stillsWidth, h: noteHeight },
                sayNote(row, note),
                NOTE,
              ),
            ]
          : []),
        ...layOutAnswers(row.answers, { x: columns.boxes, y: top, w: columns.pitch, h: inner }),
        ...layOutPoints(row, { x: columns.points, y: top, w: 10, h: inner }),
      ];
    },
  };
}

/** Reasons are the teacher's words, everything else is ours. */
function sayNote(row: GradeRow, note: string): Said {
  return { text: note, field: row.override === null ? '' : 'marks.jsonl' };
}

interface Line {
  readonly said: Said;
  readonly setting: typeof PLACE;
  readonly h: number;
}

function listIdentity(row: GradeRow, plan: Plan): readonly Line[] {
  const { station, slot, startMs, fileName, role } = row;
  const time = startMs === null ? (role === 'no-clip' ? null : GRADES.noTime) : wordTime(startMs, plan);
  const lines: [Said, typeof PLACE][] = [
    [station?.place ?? ours(GRADES.unknownPlace), PLACE],
    ...(station
      ? [
          [{ ...station.exercise, text: GRADES.rowExercise(station.exercise.text, station.reps) }, SMALL] as [
            Said,
            typeof PLACE,
          ],
        ]
      : []),
    [ours(GRADES.rowSlot(slot, time, !row.isInk && slot !== null && row.points !== null)), SMALL],
    ...(fileName !== null && slot === null
      ? [[{ text: fileName, field: `clip ${fileName}` }, SMALL] as [Said, typeof PLACE]]
      : []),
  ];
  return lines
    .filter(([said]) => said.text !== '')
    .map(([said, setting]) => ({ said, setting, h: measureHeight(said.text, ID_WIDTH, setting) }));
}

function layOutIdentity(row: GradeRow, lines: readonly Line[], { y, h }: Pick<Box, 'y' | 'h'>): Mark[] {
  const plate = { x: 0, y: y + (h - PLATE) / 2, w: PLATE, h: PLATE };
  const code = row.station?.code ?? GRADES.unknownStation;
  let top = y + (h - lines.reduce((sum, line) => sum + line.h, 0)) / 2;
  return [
    ...(row.role === 'no-clip'
      ? ([
          { kind: 'frame', box: plate, lineMm: 0.35, cutMm: 0, isDashed: true },
          text(
            { ...plate, x: plate.x + 0.6, w: PLATE - 1.2 },
            ours(code),
            type('serif', 13, SMALLEST_TYPE.teacher),
            {
              align: 'centre',
              stand: 'middle',
            },
          ),
        ] as const)
      : ([{ kind: 'plate', box: plate, letter: code, cutMm: 0 }] as const)),
    ...lines.map(({ said, setting, h: lineHeight }) => {
      const mark = text({ x: 10, y: top, w: ID_WIDTH, h: lineHeight }, said, setting);
      top += lineHeight;
      return mark;
    }),
  ];
}

/** The stills in lines, each with its number; `h` is 0 where there are none. */
function layOutStills({ strip }: GradeRow, { pictures, scale }: RowStyle, width: number) {
  const none = { h: 0, lay: (): readonly Mark[] => [] };
  const known = strip && strip.look !== 'none' ? pictures.get(strip.clip) : undefined;
  if (!known || !strip || strip.look === 'none' || strip.stills.length === 0) return none;
  const w = Math.sqrt(STILL_AREA * known.aspect) * scale;
  const h = w / known.aspect;
  const across = Math.max(1, Math.floor((width + GAP) / (w + GAP)));
  const lines = Math.ceil(strip.stills.length / across);
  const lay = ({ x, y }: Pick<Box, 'x' | 'y'>): readonly Mark[] =>
    strip.stills.flatMap(({ number }, at): Mark[] => {
      const box = { x: x + (at % across) * (w + GAP), y: y + Math.floor(at / across) * (h + GAP), w, h };
      const jpeg = known.jpegs[at];
      const label = { x: box.x, y: box.y + h - 2.3, w: number !== null && number > 9 ? 3.2 : 2.2, h: 2.3 };
      return [
        ...(jpeg ? [{ kind: 'picture', box, jpeg } as const] : []),
        { kind: 'frame', box, lineMm: 0.15, cutMm: 0, isDashed: !jpeg },
        ...(number === null
          ? []
          : ([
              { kind: 'paper', box: label },
              text(label, ours(String(number)), type('sans-bold', 5.5, SMALLEST_TYPE.teacher), {
                align: 'centre',
                stand: 'middle',
              }),
            ] as const)),
      ];
    });
  return { h: lines * (h + GAP) - GAP, lay };
}

function layOutAnswers(answers: readonly PaperAnswer[], { x, y, w, h }: Box): Mark[] {
  const side = Math.min(4.6, w - 0.8);
  return answers.flatMap(({ met, isInk }, at): Mark[] => {
    const box = { x: x + at * w + (w - side) / 2, y: y + (h - side) / 2, w: side, h: side };
    const inner = { x: box.x + side * 0.12, y: box.y + side * 0.12, w: side * 0.76, h: side * 0.76 };
    return [
      isInk && met === true
        ? { kind: 'plate', box, letter: '', cutMm: 0 }
        : { kind: 'frame', box, lineMm: 0.3, cutMm: 0, isDashed: !isInk },
      ...(met === null
        ? []
        : [{ kind: 'sign', box: inner, shape: met ? 'tick' : 'cross', isWhite: isInk && met } as const]),
    ];
  });
}

function layOutPoints({ points: amount, isInk }: GradeRow, box: Box): Mark[] {
  if (amount === null) return [];
  const setting = type(isInk ? 'serif' : 'serif-italic', 16, 6, 1.1);
  return [text(box, ours(points(amount)), setting, { align: 'right', stand: 'middle' })];
}
