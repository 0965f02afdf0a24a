import { describe, expect, test } from 'vitest';
import { canReadPaper, hasColour, readFonts, readText, readWords, renderPages } from './paper.ts';
import { fillPlan, readHarbour, sayAtLength } from './paper-plans.ts';
import { LOOKS, print } from './print-paper.ts';

const POINTS_PER_MM = 72 / 25.4;
const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;
describe.skipIf(!canReadPaper())('the print pack', () => {
  test.each(LOOKS)(
    'on %s in %s: right size, fonts in it, all inside the margins, nothing on anything else',
    async (paper, colours, look) => {
      const { file, problems } = await print(readHarbour(), look);
      expect(problems).toEqual([]);
      const fonts = await readFonts(file);
      expect(fonts.length).toBeGreaterThan(0);
      expect(fonts.filter(({ isEmbedded }) => !isEmbedded)).toEqual([]);
      const pages = await readWords(file);
      expect(pages).toHaveLength(16);
      for (const { width, height, words } of pages) {
        expect([width, height].map(Math.round)).toEqual(PAPERS[paper].map(Math.round));
        expect(findOutside(words, width, height)).toEqual([]);
        expect(findOnTop(words)).toEqual([]);
      }
      expect(await hasColour(file)).toBe(colours === 'colour');
      expect(await findInkInMargins(file, PAPERS[paper])).toEqual([]);
    },
  );

  test('with every field as long as a plan takes still fits, on more pages', async () => {
    const { file, problems, pageCount } = await print(readHarbour(fillPlan));
    expect(problems).toEqual([]);
    expect(pageCount).toBeGreaterThan(16);
    for (const { width, height, words } of await readWords(file)) {
      expect(findOutside(words, width, height)).toEqual([]);
      expect(findOnTop(words)).toEqual([]);
    }
  });

  test('says all that the plan and the roster say, names in Latin, Greek and Cyrillic among it', async () => {
    const { plan, pupils } = readHarbour();
    const [first, second, ...rest] = pupils;
    if (!first || !second) throw new Error('the harbour has pupils');
    const named = [
      { ...first, given: 'Ελένη', family: 'Παπαδοπούλου' },
      { ...second, given: 'Наталья', family: 'Ївженко' },
      ...rest,
    ];
    const { file, problems } = await print({ plan, pupils: named });
    expect(problems).toEqual([]);
    const said = await readText(file);
    const wanted = [
      ...named.map(({ given, family }) => `${given} ${family}`),
      ...plan.stations.flatMap(({ place, exercise, clue = '', caution = '' }) => [
        place,
        exercise,
        clue,
        caution,
      ]),
      ...plan.squads.map(({ tablet }) => tablet),
    ];
    expect(wanted.filter((words) => !said.includes(words))).toEqual([]);
  });

  test('a name in letters that no font has leaves a line to write on, and says whose', async () => {
    const { plan, pupils } = readHarbour();
    const named = pupils.map((pupil, at) => (at === 0 ? { ...pupil, given: '小明', family: '王' } : pupil));
    const { file, problems } = await print({ plan, pupils: named }, { parts: ['squads'] });
    expect(problems).toEqual([{ code: 'print-letters-missing', field: 'roster k-0412', letters: '小明王' }]);
    const said = await readText(file);
    expect(said).toContain('Bram Thistlewick');
    expect(said).not.toMatch(/[小明王\u25a1\ufffd]/);
  });

  test('an exercise too long to be read from two metres is named, and its card alone left out', async () => {
    const lesson = readHarbour((raw) => Object.assign(raw.stations[1] ?? {}, { exercise: sayAtLength(190) }));
    const { problems, pageCount } = await print(lesson, { parts: ['cards'] });
    expect(problems).toEqual([
      { code: 'print-text-too-long', field: 'stations[1].exercise', text: sayAtLength(190) },
    ]);
    expect(pageCount).toBe(5);
  });
});

/**
 * Words that reach out of the block of 190 by 259 mm in the middle of the page. A word's box is as high as its font
 * allows, a quarter more than its letters are.
 */
function findOutside(
  words: Awaited<ReturnType<typeof readWords>>[number]['words'],
  width: number,
  height: number,
) {
  const side = (width - 190 * POINTS_PER_MM) / 2 - 1;
  const top = (height - 259 * POINTS_PER_MM) / 2 - 1;
  return words.filter(({ box: [left, up, right, down] }) => {
    const spare = (down - up) / 4;
    return left < side || up + spare < top || right > width - side || down - spare > height - top;
  });
}

/** Words that cover each other by more than lines set close do. */
function findOnTop(words: Awaited<ReturnType<typeof readWords>>[number]['words']): string[] {
  return words.flatMap((one, at) =>
    words.slice(at + 1).flatMap((other) => {
      const across = Math.min(one.box[2], other.box[2]) - Math.max(one.box[0], other.box[0]);
      const [here, there] = [getLetters(one.box), getLetters(other.box)];
      const down = Math.min(here[1], there[1]) - Math.max(here[0], there[0]);
      return across > 0.5 && down > 0.5 ? [`${one.text} / ${other.text}`] : [];
    }),
  );
}

/** From capitals' tops to the line they stand on, about: a word's box reaches further both ways. */
function getLetters([, up, , down]: readonly [number, number, number, number]): readonly [number, number] {
  return [up + (down - up) * 0.3, down - (down - up) * 0.3];
}

/** Pages with anything at all printed outside the block, a hair's breadth of its edge aside. */
async function findInkInMargins(file: string, [wide, high]: readonly [number, number]): Promise<number[]> {
  const { pages, dispose } = await renderPages(file, 36);
  const marked = pages.flatMap(({ width, height, luma }, page) => {
    const side = Math.floor(((wide - 190 * POINTS_PER_MM) / 2) * 0.5) - 1;
    const top = Math.floor(((high - 259 * POINTS_PER_MM) / 2) * 0.5) - 1;
    const isMargin = (at: number) => {
      const [x, y] = [at % width, Math.floor(at / width)];
      return x < side || y < top || x >= width - side || y >= height - top;
    };
    return luma.some((level, at) => level < 250 && isMargin(at)) ? [page + 1] : [];
  });
  await dispose();
  return marked;
}
