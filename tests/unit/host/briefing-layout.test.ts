import { describe, expect, test } from 'vitest';
import { PAPER, sayCountsAs } from '../../../renderer/text/english/paper.ts';
import { layOutBriefing } from '../../../src-core/host/pdf/pages/briefing-pages.ts';
import { UNDER_HEAD } from '../../../src-core/host/pdf/pages/teacher-head.ts';
import type { BriefingSheet } from '../../../src-core/printing/teacher-sheets.ts';

const say = (text: string) => ({ text, field: 'f' });
const sheet: BriefingSheet = {
  kind: 'briefing',
  heading: say('Quay loop, 9 Kelp'),
  school: say('Cobble Quay School'),
  objective: say('Find six places.'),
  words: [],
  rules: ['Film the card first.', 'Walk between places.'].map(say),
  boundaries: [say('No further than the gate.')],
  cautions: ['Stop when it hurts.', 'Two arms’ lengths.', 'Drink.'].map(say),
  stationCautions: ['A', 'B', 'C', 'D', 'E', 'F'].map((place) => ({
    place: say(place),
    caution: say('Dry ground only'),
  })),
};

/** The uppermost text of each column, left before right, page after page. */
const listTops = (of: BriefingSheet) =>
  layOutBriefing(of).flatMap(({ marks }) =>
    [0, 99].flatMap((x) =>
      marks.flatMap((mark) =>
        mark.kind === 'text' && mark.box.x === x && mark.box.y === UNDER_HEAD ? [mark.said.text] : [],
      ),
    ),
  );

describe('the briefing', () => {
  test('parts no section that fits into a column of its own', () => {
    const [left, right] = listTops(sheet);
    expect(left).toBe(PAPER.objective);
    expect([PAPER.cautions, PAPER.usual]).toContain(right);
  });

  test('says again under what heading a section goes on that fits into none', () => {
    const many = Array.from({ length: 90 }, (_, at) => say(`Caution number ${at}`));
    const tops = listTops({ ...sheet, cautions: many });
    expect(tops).toContain(PAPER.continued(PAPER.cautions));
    const titles = [PAPER.objective, PAPER.rules, PAPER.boundaries, PAPER.cautions, PAPER.usual];
    for (const top of tops) expect(titles).toContain(top.replace(', continued', ''));
  });
});

test.each([
  ['Sit down as to a crate, stand up: one', 'One rep: sit down as to a crate, stand up.'],
  ['Each tap of a shoulder: one', 'Each tap of a shoulder is one rep.'],
  ['There and back counts once', 'There and back counts once'],
])('on a card, “%s” is a sentence for pupils', (text, said) => {
  expect(sayCountsAs(text)).toBe(said);
});
