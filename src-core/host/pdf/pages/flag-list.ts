import { describeFlag, nameOneFlag } from '../../../../renderer/text/english/flags.ts';
import { GRADES, wordSettled } from '../../../../renderer/text/english/grade-paper.ts';
import type { Names } from '../../../../renderer/text/names.ts';
import type { SquadGrades } from '../../../printing/grade-pages.ts';
import { measureHeight } from '../fit-text.ts';
import type { Block } from '../flow.ts';
import { BLOCK, ours, rule, SMALLEST_TYPE, text, type } from '../marks.ts';

const WHAT = type('sans', 8.5, 6, 1.15);
const OPEN = type('sans-bold', 8.5, 6, 1.15);
const NAME = type('sans-bold', 8.5, 7, 1.15);
const CLIP = type('sans', 7.5, SMALLEST_TYPE.teacher, 1.15);

/** Columns in millimetres: which flag on which clip, what it says, how it was settled. */
const COLUMNS = { name: { x: 0, w: 36 }, what: { x: 38, w: 90 }, settled: { x: 131, w: 59 } } as const;

/** The flags of one squad, a line each; a line that says so where there was none. */
export function listFlags({ flags, squad }: SquadGrades, names: Names): readonly Block[] {
  if (flags.length === 0) {
    const lay: Block['lay'] = (y) => [
      text({ x: 0, y, w: BLOCK.w, h: 5 }, ours(GRADES.noFlags), WHAT, { stand: 'middle' }),
    ];
    return [{ h: 6, lay }];
  }
  return flags.map((one): Block => {
    const field = `flag of ${squad.name.text}`;
    const clip = { text: one.flag.clip === null ? '' : names.clip(one.flag.clip), field };
    const what = { text: describeFlag(one.flag, names).what, field };
    const settled = { text: wordSettled(one), field };
    const hand = one.answer ? WHAT : OPEN;
    const clipHeight = measureHeight(clip.text, COLUMNS.name.w, CLIP, 1);
    const inner = Math.max(
      3.6 + clipHeight,
      measureHeight(what.text, COLUMNS.what.w, WHAT, 3),
      measureHeight(settled.text, COLUMNS.settled.w, hand, 3),
    );
    return {
      h: inner + 1.2,
      lay: (y) => [
        text({ ...COLUMNS.name, y: y + 0.4, h: 3.6 }, ours(nameOneFlag(one.flag)), NAME),
        ...(clipHeight > 0 ? [text({ ...COLUMNS.name, y: y + 4, h: clipHeight }, clip, CLIP)] : []),
        text({ ...COLUMNS.what, y: y + 0.4, h: inner }, what, WHAT),
        text({ ...COLUMNS.settled, y: y + 0.4, h: inner }, settled, hand),
        rule(0, y + inner + 1, BLOCK.w, 0.12),
      ],
    };
  });
}
