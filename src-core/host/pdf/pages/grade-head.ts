import { GRADES, wordDay, wordState } from '../../../../renderer/text/english/grade-paper.ts';
import type { SheetHead } from '../../../printing/grade-pages.ts';
import type { PaperSquad } from '../../../printing/paper-pinnie.ts';
import { BLOCK, type Mark, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';

/** Where a grade sheet goes on under its head, in millimetres. */
export const GRADES_TOP = 24;

/** Where its foot begins, in millimetres from the top of the block. */
export const GRADES_BOTTOM = BLOCK.h - 5;

/** The head of every page: school, lesson and day; the squad, or the sheet's own name; and whether it is final. */
export function layOutGradeHead(head: SheetHead, squad: PaperSquad | null): Mark[] {
  const { state } = head;
  const day = GRADES.period(wordDay(head.date), head.period);
  const middle = { stand: 'middle' } as const;
  const right = { align: 'right', stand: 'middle' } as const;
  const where = { text: `${head.school.text}, ${head.lesson.text}, ${day}`, field: head.lesson.field };
  const at = squad ? 12 : 0;
  return [
    text({ x: 0, y: 0, w: 126, h: 6 }, where, type('sans', 10, SMALLEST_TYPE.teacher, 1.1), middle),
    ...(squad ? [{ kind: 'bib', box: { x: 0, y: 7.5, w: 9.5, h: 11.4 }, squad } as const] : []),
    text(
      { x: at, y: 7, w: 126 - at, h: 12.5 },
      squad?.name ?? ours(GRADES.title),
      type('serif', 27, 6, 1.1),
      middle,
    ),
    { kind: 'frame', box: { x: 130, y: 5, w: 60, h: 13 }, lineMm: state.isFinal ? 0.3 : 0.7, cutMm: 0 },
    text(
      { x: 132, y: 6, w: 56, h: 5.5 },
      ours(state.isFinal ? GRADES.final : GRADES.notFinal),
      type('sans-bold', 11),
      right,
    ),
    text({ x: 132, y: 11, w: 56, h: 6.4 }, ours(wordState(state)), type('sans', 8.5, 6, 1.05), right),
    rule(0, 20.5, BLOCK.w, 1),
  ];
}

/** Whose page it is, at its foot. */
export function layOutGradeFoot(of: string, page: number, pages: number): Mark[] {
  const middle = { stand: 'bottom' } as const;
  return [
    text({ x: 0, y: 255, w: 130, h: 4 }, ours(GRADES.policy), type('sans', 7.5, 7), middle),
    text(
      { x: 130, y: 255, w: 60, h: 4 },
      { text: GRADES.page(of, page, pages), field: '' },
      type('sans', 7.5, SMALLEST_TYPE.teacher, 1.05),
      {
        align: 'right',
        stand: 'bottom',
      },
    ),
  ];
}
