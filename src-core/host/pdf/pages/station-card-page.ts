import { PAPER, sayCountsAs } from '../../../../renderer/text/english/paper.ts';
import { QUIET_MODULES } from '../../../platform/qr-symbol.ts';
import type { StationCard } from '../../../printing/station-card.ts';
import { fitText } from '../fit-text.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';
import { layOutList } from '../text-list.ts';

/**
 * Smallest type of the exercise's name: capitals of 8 mm, a 250th of the 2 m that it is read from (common practice).
 */
const EXERCISE_SMALLEST = 35;

/** A station's card. Exercise and reps are read from two metres, the code from as far as the card itself says. */
export function layOutStationCard(card: StationCard): Layout {
  return {
    title: PAPER.station(card.code),
    marks: [
      ...layOutHead(card),
      ...layOutExercise(card),
      ...layOutLists(card),
      ...layOutCode(card),
      ...layOutFoot(card),
    ],
  };
}

function layOutHead({ code, place, lesson, className }: StationCard): Mark[] {
  return [
    { kind: 'plate', box: { x: 0, y: 0, w: 48, h: 44 }, letter: code, cutMm: 9 },
    text({ x: 55, y: 1, w: 135, h: 7 }, ours(PAPER.station(code)), type('sans', 15)),
    text({ x: 55, y: 8, w: 135, h: 23 }, place, type('serif', 44, 15, 1.1), { stand: 'middle' }),
    text({ x: 55, y: 32, w: 90, h: 11 }, lesson, type('sans-bold', 15, 9), { stand: 'bottom' }),
    text({ x: 147, y: 32, w: 43, h: 11 }, className, type('sans-bold', 15, 8), {
      align: 'right',
      stand: 'bottom',
    }),
    rule(0, 47, 190, 1.1),
  ];
}

const EXERCISE_TYPE = type('serif', 52, EXERCISE_SMALLEST, 1.02);

/** Height of two lines of the exercise's name, and of the three that a long one needs; what counts has the rest. */
const EXERCISE_HEIGHTS = { usual: 31, long: 38 };

function layOutExercise({ exercise, countsAs, counting, reps }: StationCard): Mark[] {
  const { usual, long } = EXERCISE_HEIGHTS;
  const h = fitText(exercise.text, { widthMm: 138, heightMm: usual }, EXERCISE_TYPE) ? usual : long;
  return [
    text({ x: 0, y: 51, w: 138, h }, exercise, EXERCISE_TYPE, { stand: 'middle' }),
    text(
      { x: 0, y: 52 + h, w: 138, h: 48 - h },
      countsAs ? { ...countsAs, text: sayCountsAs(countsAs.text) } : ours(PAPER.countsAs[counting]),
      type('sans', 17, 11),
    ),
    { kind: 'frame', box: { x: 144, y: 52, w: 46, h: 47 }, lineMm: 0.7, cutMm: 0 },
    text({ x: 145, y: 53, w: 44, h: 34 }, ours(String(reps)), type('serif', 96, 60, 1), {
      align: 'centre',
      stand: 'middle',
    }),
    text({ x: 145, y: 87, w: 44, h: 10 }, ours(PAPER.repsTogether(reps)), type('sans-bold', 14, 10), {
      align: 'centre',
      stand: 'middle',
    }),
    rule(0, 103, 190, 0.5),
  ];
}

function layOutLists({ caution, leadsOn }: StationCard): Mark[] {
  const lines = [...PAPER.orderList, PAPER.walkOn[leadsOn]];
  const order = lines.map((line, at) => ({ said: ours(line), sign: String(at + 1) }));
  const care = [...(caution ? [caution] : []), ...PAPER.careList.map(ours)].map((said) => ({
    said,
    sign: 'box',
  }));
  const setting = type('sans', 13.5, 9);
  return [
    text({ x: 0, y: 107, w: 74, h: 8 }, ours(PAPER.order), type('serif', 17)),
    ...layOutList({ x: 0, y: 116, w: 74, h: 53 }, order, setting),
    text({ x: 0, y: 172, w: 74, h: 8 }, ours(PAPER.care), type('serif', 17)),
    ...layOutList({ x: 0, y: 181, w: 74, h: 57 }, care, setting),
  ];
}

function layOutCode({ qr, code, lesson, revision, demonstration }: StationCard): Mark[] {
  const quiet = (qr.widthMm / qr.modules) * QUIET_MODULES;
  const outer = qr.widthMm + 2 * quiet;
  // The quiet zone belongs to the code: words begin where it ends.
  const [x, y] = [190 - outer, 105];
  const below = y + outer + 0.5;
  const words = { x: 82, w: 108 };
  return [
    { kind: 'code', box: { x: x + quiet, y: y + quiet, w: qr.widthMm, h: qr.widthMm }, code: qr },
    text({ ...words, y: below, h: 9 }, ours(PAPER.filmFirst), type('serif', 21, 16, 1.1), {
      align: 'centre',
    }),
    text({ ...words, y: below + 9, h: 11 }, ours(PAPER.hold(qr.distanceMetres)), type('sans', 12, 10), {
      align: 'centre',
    }),
    text(
      { x: 0, y: 249.5, w: 190, h: 4.5 },
      { ...lesson, text: PAPER.codeSays(code, lesson.text, revision) },
      type('sans', 9.5, 5, 1.15),
      { align: 'right', stand: demonstration ? 'top' : 'bottom' },
    ),
    ...(demonstration
      ? [
          text(
            { x: 0, y: 254, w: 190, h: 5 },
            { ...demonstration, text: PAPER.codeOpens(demonstration.text) },
            // The longest address that a plan takes still stands on one line; the code opens it anyway.
            type('sans', 9.5, 4, 1.15),
            { align: 'right', stand: 'bottom' },
          ),
        ]
      : []),
  ];
}

function layOutFoot({ easier, harder }: StationCard): Mark[] {
  const said = [
    ...(easier ? [{ said: easier, label: PAPER.easier }] : []),
    ...(harder ? [{ said: harder, label: PAPER.harder }] : []),
  ];
  const w = said.length === 2 ? 92 : 190;
  return [
    { kind: 'rule', box: { x: 0, y: 240, w: 190, h: 0.4 }, isDashed: true },
    ...said.map(({ said: { text: words, field }, label }, at) =>
      text(
        { x: at * 98, y: 241.6, w, h: 7.8 },
        { text: `${label} ${words}`, field },
        type('sans', 12, 6, 1.15),
      ),
    ),
  ];
}
