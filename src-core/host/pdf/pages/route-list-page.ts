import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { RouteList } from '../../../printing/squad-sheet.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';

const TOP = 47;
const ROW_HEIGHT = 17;

/** A squad's list of stations, to be walked from the top down. */
export function layOutRouteList({ squad, heading, stops }: RouteList): Layout {
  return {
    title: PACK_NAMES.squads.title,
    marks: [
      { kind: 'bib', box: { x: 0, y: 1, w: 30, h: 36 }, squad },
      text({ x: 38, y: 0, w: 152, h: 20 }, squad.name, type('serif', 44, 14, 1.1), { stand: 'middle' }),
      text({ x: 38, y: 20, w: 152, h: 9 }, ours(PAPER.route), type('serif', 20), { stand: 'middle' }),
      text({ x: 38, y: 29, w: 152, h: 8 }, heading, type('sans', 13, 6), { stand: 'middle' }),
      rule(0, 42, 190, 1.1),
      ...stops.flatMap((stop, at) => layOutStop(stop, TOP + at * ROW_HEIGHT)),
      text({ x: 0, y: 252, w: 190, h: 7 }, ours(`${PAPER.walk} ${PAPER.routeEnd}`), type('sans', 12, 10), {
        stand: 'bottom',
      }),
    ],
  };
}

/** A box to tick once the film is done, letter and place, and under it what to do on the way there. */
function layOutStop({ number, code, place, transit }: RouteList['stops'][number], y: number): Mark[] {
  const h = ROW_HEIGHT - 2;
  const way = transit && { ...transit, text: `${PAPER.onTheWay} ${transit.text}` };
  const middle = { stand: 'middle' } as const;
  return [
    text({ x: 0, y, w: 11, h }, ours(String(number)), type('sans-bold', 15), middle),
    { kind: 'plate', box: { x: 12, y: y + 1, w: 15, h: 13 }, letter: code, cutMm: 3 },
    text({ x: 32, y, w: 140, h: way ? 7.6 : h }, place, type('serif', 22, 11, 1.05), middle),
    ...(way ? [text({ x: 32, y: y + 7.8, w: 140, h: 7.2 }, way, type('sans', 12, 8, 1.1), middle)] : []),
    { kind: 'frame', box: { x: 180, y: y + (h - 8) / 2, w: 8, h: 8 }, lineMm: 0.4, cutMm: 0 },
    rule(0, y + h + 0.9, 190, 0.15),
  ];
}
