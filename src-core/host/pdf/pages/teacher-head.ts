import { PAPER } from '../../../../renderer/text/english/paper.ts';
import type { Said } from '../../../printing/said.ts';
import { type Mark, ours, rule, text, type } from '../marks.ts';

/** Where a sheet goes on under its head, in millimetres. */
export const UNDER_HEAD = 27;

/** The head of a sheet: title, lesson, the field line. `aside` stands at its right. */
export function layOutHead(title: string, heading: Said, aside: Said = ours(PAPER.teacherOnly)): Mark[] {
  return [
    text({ x: 0, y: 0, w: 118, h: 13 }, ours(title), type('serif', 28), { stand: 'bottom' }),
    text({ x: 0, y: 13, w: 118, h: 8 }, heading, type('sans', 13, 6), { stand: 'middle' }),
    text({ x: 120, y: 6, w: 70, h: 15 }, aside, type('sans-bold', 12, 6), {
      align: 'right',
      stand: 'bottom',
    }),
    rule(0, 22.5, 190, 1.1),
  ];
}
