import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { RouteKey } from '../../../printing/route-key.ts';
import { fitText } from '../fit-text.ts';
import { type Box, type Layout, type Mark, ours, rule, text, type } from '../marks.ts';
import { layOutHead, UNDER_HEAD } from './teacher-head.ts';

const SLOT_WIDTH = 13;
const FREE_WIDTH = 17;

/** Smallest type, in points. */
const SMALLEST = 6;
const ROWS_TOP = UNDER_HEAD + 20;
/** Where the list of those who are not filmed begins, from the foot. */
const FOOT_TOP = 205;

/** The route key: slots down, squads across, as in a printed timetable. */
export function layOutRouteKey(key: RouteKey): Layout {
  return {
    title: PACK_NAMES.key.title,
    marks: [
      ...layOutHead(PACK_NAMES.key.title, key.heading),
      ...layOutSquads(key),
      ...layOutSlots(key),
      ...layOutNotShown(key.notShown),
    ],
  };
}

function getColumn({ squads }: RouteKey, at: number): { readonly x: number; readonly w: number } {
  const w = (190 - SLOT_WIDTH - FREE_WIDTH) / squads.length;
  return { x: SLOT_WIDTH + at * w, w };
}

function layOutSquads(key: RouteKey): Mark[] {
  const caption = { stand: 'bottom' } as const;
  return [
    text({ x: 0, y: UNDER_HEAD, w: SLOT_WIDTH, h: 18 }, ours(PAPER.slot), type('sans-bold', 10), caption),
    ...key.squads.flatMap((squad, at): Mark[] => {
      const { x, w } = getColumn(key, at);
      return [
        { kind: 'bib', box: { x, y: UNDER_HEAD, w: 8.5, h: 10.2 }, squad },
        text(
          { x, y: UNDER_HEAD + 10.5, w: w - 1.5, h: 7.5 },
          squad.name,
          type('sans-bold', 12, 6, 1.1),
          caption,
        ),
      ];
    }),
    text(
      { x: 190 - FREE_WIDTH, y: UNDER_HEAD, w: FREE_WIDTH, h: 18 },
      ours(PAPER.free),
      type('sans', 10),
      caption,
    ),
    rule(0, UNDER_HEAD + 18.6, 190, 0.5),
  ];
}

function layOutSlots(key: RouteKey): Mark[] {
  const h = Math.min(13, (FOOT_TOP - 4 - ROWS_TOP) / key.slots.length);
  const middle = { stand: 'middle' } as const;
  const shrink = (size: number) => Math.min(size, h * 2.2);
  const side = Math.min(7.5, h - 0.8);
  const small = type('sans', shrink(10.5), SMALLEST, 1.05);
  const room = { widthMm: getColumn(key, 0).w - side - 2, heightMm: h };
  // Places stand beside all letters or beside none; the answer key has them too.
  const hasPlaces = key.slots.every(({ at }) =>
    at.every((stop) => !stop || fitText(stop.place.text, room, small)),
  );
  return key.slots.flatMap(({ at, free }, slot): Mark[] => {
    const y = ROWS_TOP + slot * h;
    return [
      text({ x: 0, y, w: SLOT_WIDTH - 2, h }, ours(String(slot + 1)), type('sans-bold', shrink(13)), middle),
      ...at.flatMap((stop, squad): Mark[] => {
        const { x, w } = getColumn(key, squad);
        if (!stop) return [text({ x, y, w: w - 1.5, h }, ours(PAPER.none), type('sans', shrink(11)), middle)];
        return [
          { kind: 'plate', box: { x, y: y + (h - side) / 2, w: side, h: side }, letter: stop.code, cutMm: 0 },
          ...(hasPlaces
            ? [text({ x: x + side + 1.2, y, w: w - side - 2, h }, stop.place, small, middle)]
            : []),
        ];
      }),
      layOutFree(free, { x: 190 - FREE_WIDTH, y, w: FREE_WIDTH, h }),
      rule(0, y + h - 0.1, 190, 0.15),
    ];
  });
}

/** Stations that stand empty; how many, where they are too many to be named. */
function layOutFree(free: readonly string[], box: Box): Mark {
  const setting = type('sans', Math.min(11, box.h * 2.2), SMALLEST, 1.05);
  const named = free.join(' ') || PAPER.none;
  const fitted = fitText(named, { widthMm: box.w, heightMm: box.h }, setting);
  return text(box, ours(fitted ? named : String(free.length)), setting, { stand: 'middle' });
}

function layOutNotShown(notShown: RouteKey['notShown']): Mark[] {
  const end = text({ x: 0, y: 252, w: 190, h: 7 }, ours(PAPER.keyEnd), type('sans', 11), { stand: 'bottom' });
  if (notShown === null) return [end];
  const lines = notShown.map(({ squad, pupils }) => ({
    text: `${squad.text}: ${pupils.map((pupil) => pupil.text).join(', ')}.`,
    field: pupils[0]?.field ?? squad.field,
  }));
  const h = Math.min(7, 32 / Math.max(1, lines.length));
  return [
    rule(0, FOOT_TOP, 190, 0.5),
    text({ x: 0, y: FOOT_TOP + 2, w: 190, h: 8 }, ours(PAPER.notShown), type('serif', 16)),
    ...(lines.length === 0
      ? [text({ x: 0, y: FOOT_TOP + 10, w: 190, h: 7 }, ours(PAPER.notShownNone), type('sans', 12))]
      : []),
    ...lines.map((line, at) =>
      text(
        { x: 0, y: FOOT_TOP + 10 + at * h, w: 190, h },
        line,
        type('sans-bold', Math.min(13, h * 2.2), 4, 1.1),
        { stand: 'middle' },
      ),
    ),
    ...(lines.length === 0
      ? []
      : [
          text(
            { x: 0, y: FOOT_TOP + 11 + lines.length * h, w: 190, h: 5 },
            ours(PAPER.notShownSentence),
            type('sans', 10.5, 9),
          ),
        ]),
    end,
  ];
}
