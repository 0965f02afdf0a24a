import { GRADES, wordTime } from '../../../../renderer/text/english/grade-paper.ts';
import type { Plan } from '../../../lesson/plan.ts';
import type { RouteWalk } from '../../../printing/route-walk.ts';
import type { Block } from '../flow.ts';
import { type Mark, ours, text, type } from '../marks.ts';

/** Distance of stops, in millimetres. */
const STEP = 4.3;

const TITLE_HEIGHT = 7;
const SIDE = 3.7;
/** Where threads begin and end. */
const [FROM_X, TO_X] = [10, 30] as const;

/** Stops that one page takes under its head; more go on on the next. */
const STOPS_A_BLOCK = 50;

/**
 * The route down the left, the clips in the order filmed down the right, a thread from each slot to its clip. One block,
 * or several where one page does not take them: a clip whose slot stands in another block says which.
 */
export function buildRouteThreads(walk: RouteWalk, plan: Plan): readonly Block[] {
  const stops = Math.max(walk.expected.length, walk.walked.length);
  const blocks = Math.max(1, Math.ceil(stops / STOPS_A_BLOCK));
  return Array.from({ length: blocks }, (_, at) => buildThreadBlock(walk, at * STOPS_A_BLOCK, plan));
}

function buildThreadBlock({ expected, walked }: RouteWalk, first: number, plan: Plan): Block {
  const last = first + STOPS_A_BLOCK;
  const [slots, clips] = [expected.slice(first, last), walked.slice(first, last)];
  return {
    h: TITLE_HEIGHT + Math.max(slots.length, clips.length) * STEP + 1,
    lay: (y) => {
      const getTop = (at: number) => y + TITLE_HEIGHT + at * STEP;
      return [
        text({ x: 0, y, w: 60, h: TITLE_HEIGHT - 1 }, ours(GRADES.walk), type('serif', 12), {
          stand: 'middle',
        }),
        ...slots.flatMap((stop, at) => layOutStop(stop, first + at, getTop(at))),
        ...clips.flatMap((stop, at): Mark[] => {
          const { slot, isBroken } = stop;
          const isHere = slot !== null && slot >= first && slot < last;
          return [
            ...layOutWalked(stop, getTop(at), { plan, isFar: slot !== null && !isHere }),
            ...(isHere ? [layOutThread(slot - first, at, { y: getTop(0), isBroken })] : []),
          ];
        }),
      ];
    },
  };
}

const CENTRE = { align: 'centre', stand: 'middle' } as const;
const MIDDLE = { stand: 'middle' } as const;

function layOutStop({ station, hasClip }: RouteWalk['expected'][number], slot: number, y: number): Mark[] {
  const box = { x: 5.2, y: y + (STEP - SIDE) / 2, w: SIDE + 0.6, h: SIDE };
  return [
    text({ x: 0, y, w: 4.4, h: STEP }, ours(String(slot + 1)), type('sans', 7), {
      align: 'right',
      stand: 'middle',
    }),
    { kind: 'frame', box, lineMm: 0.25, cutMm: 0, isDashed: !hasClip },
    text(box, ours(station), type('serif', 9, 5), CENTRE),
  ];
}

function layOutWalked(
  stop: RouteWalk['walked'][number],
  y: number,
  { plan, isFar }: { readonly plan: Plan; readonly isFar: boolean },
): Mark[] {
  const { station, slot, isBroken, startMs } = stop;
  const bar = { x: TO_X, y: y + 0.7, w: slot === null ? 1 : 1.2, h: STEP - 1.4 };
  const time = startMs === null ? GRADES.noTime : wordTime(startMs, plan);
  return [
    slot === null
      ? { kind: 'frame', box: bar, lineMm: 0.2, cutMm: 0, isDashed: true }
      : { kind: 'plate', box: bar, letter: '', cutMm: 0 },
    text(
      { x: TO_X + 2.5, y, w: 7, h: STEP },
      ours(station ?? GRADES.unknownStation),
      type('serif', 9, 5),
      MIDDLE,
    ),
    text({ x: TO_X + 10, y, w: 13, h: STEP }, ours(time), type('sans', 8), MIDDLE),
    ...(isFar
      ? [
          text(
            { x: TO_X + 29, y, w: 20, h: STEP },
            ours(GRADES.rowSlot(slot, null, false)),
            type('sans', 8),
            MIDDLE,
          ),
        ]
      : []),
    ...(isBroken
      ? [
          {
            kind: 'sign',
            box: { x: TO_X + 24, y: y + (STEP - 3) / 2, w: 3, h: 3 },
            shape: 'cross',
            isWhite: false,
          } as const,
        ]
      : []),
  ];
}

function layOutThread(
  slot: number,
  at: number,
  { y, isBroken }: { readonly y: number; readonly isBroken: boolean },
): Mark {
  const middle = STEP / 2;
  return {
    kind: 'thread',
    box: { x: FROM_X, y, w: TO_X - FROM_X, h: 0 },
    fromMm: slot * STEP + middle,
    toMm: at * STEP + middle,
    lineMm: isBroken ? 0.7 : 0.25,
  };
}
