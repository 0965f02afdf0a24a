import { GRADES } from '../../../../renderer/text/english/grade-paper.ts';
import { measureHeight } from '../fit-text.ts';
import type { Block } from '../flow.ts';
import { BLOCK, ours, rule, text, type } from '../marks.ts';

const FOOTNOTE = type('sans', 7.5, 6.5, 1.2);

/** Room to sign in, the line and what stands under it, in millimetres. */
const [ROOM, CAPTION] = [9.5, 5] as const;

/** Where the teacher signs, with what the signs on the page mean. */
export function buildSignature(footnotes: readonly string[]): Block {
  const note = footnotes.join(' ');
  const noteHeight = measureHeight(note, BLOCK.w, FOOTNOTE, 4);
  return {
    h: ROOM + CAPTION + noteHeight + 1,
    lay: (y) => [
      rule(0, y + ROOM, 118, 0.3),
      rule(126, y + ROOM, BLOCK.w - 126, 0.3),
      text({ x: 0, y: y + ROOM + 0.6, w: 118, h: 4 }, ours(GRADES.teacher), type('sans', 8)),
      text({ x: 126, y: y + ROOM + 0.6, w: 64, h: 4 }, ours(GRADES.date), type('sans', 8)),
      text({ x: 0, y: y + ROOM + CAPTION, w: BLOCK.w, h: noteHeight }, ours(note), FOOTNOTE),
    ],
  };
}
