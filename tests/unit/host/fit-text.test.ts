import { expect, test } from 'vitest';
import { fitText } from '../../../src-core/host/pdf/fit-text.ts';
import { type Hand, measureRun, setText } from '../../../src-core/host/pdf/paper-fonts.ts';
import { estimateEms } from '../../../src-core/platform/line-pieces.ts';

const HANDS: readonly Hand[] = ['serif', 'serif-italic', 'sans', 'sans-bold'];

function measure(text: string, hand: Hand): number {
  const { runs, missing } = setText(text, hand);
  return missing === '' ? runs.reduce((sum, run) => sum + measureRun(run), 0) : 0;
}

/** The lines of a text in a column of so many ems. */
function breakAt(text: string, ems: number): readonly string[] | null {
  const setting = { hand: 'sans', size: 10, smallest: 10, leading: 1.2 } as const;
  const fitted = fitText(text, { widthMm: (ems * 10 * 25.4) / 72, heightMm: 1000 }, setting);
  return fitted?.lines.map((line) => line.map((run) => run.text).join('')) ?? null;
}

test('a line breaks after a hyphen between letters where it must, and nowhere else within a word', () => {
  expect(breakAt('Breakwater-companionway rails', 30)).toEqual(['Breakwater-companionway rails']);
  expect(breakAt('Breakwater-companionway rails', 9)).toEqual(['Breakwater-', 'companionway rails']);
  expect(breakAt('The T-shirt 10-12', 4)).toEqual(['The', 'T-shirt', '10-12']);
  expect(breakAt('Breakwatercompanionway', 9)).toBeNull();
});

test('no letter that paper has is wider in any hand than is reckoned with, nor is a word of them', () => {
  const blocks = [
    [0x21, 0x7e],
    [0xa1, 0x17f],
    [0x386, 0x3ce],
    [0x401, 0x45f],
  ] as const;
  const letters = blocks
    .flatMap(([from, to]) =>
      Array.from({ length: to - from + 1 }, (_, at) => String.fromCodePoint(from + at)),
    )
    .filter((letter) => /[\p{L}\p{N}\p{P}]/u.test(letter));
  const wider = HANDS.flatMap((hand) =>
    letters.filter((letter) => measure(letter, hand) > estimateEms(letter) + 0.001),
  );
  expect(wider).toEqual([]);
  for (const word of ['Wattwanderung', 'Breakwater', 'προκυμαία', 'Перекладина', 'Åkerøyfjord'])
    for (const hand of HANDS) {
      expect(measure(word, hand), word).toBeLessThanOrEqual(estimateEms(word));
      // Not so much wider that ordinary words would be refused.
      expect(estimateEms(word) / measure(word, hand), word).toBeLessThan(1.45);
    }
});
