import { describe, expect, test } from 'vitest';
import { readCodes } from '../../../src-core/host/card-reader.ts';
import { formatClockCard, formatStationCard } from '../../../src-core/lesson/card-text.ts';
import { drawScene, type Scene, type SceneCard } from './draw-scene.ts';

const CARD = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });

const TURNS = [0, 15, 45, 90, 120, 180, 210, 300];

async function countReads(card: Omit<SceneCard, 'text'>, scene: Partial<Scene>): Promise<number> {
  let reads = 0;
  for (const [seed, turnDegrees] of TURNS.entries()) {
    const picture = drawScene({
      width: 640,
      height: 360,
      seed,
      ...scene,
      card: { text: CARD, turnDegrees, ...card },
    });
    const texts = await readCodes(picture);
    expect(texts.filter((text) => text !== CARD)).toEqual([]);
    reads += texts.length;
  }
  return reads;
}

describe('a station card is read from 3 pixels a module on', () => {
  test.each([3, 4, 6])('at %i pixels, turned eight ways, with sensor noise', async (pixelsPerModule) => {
    expect(await countReads({ pixelsPerModule }, { noise: 6 })).toBe(TURNS.length);
  });

  test.each([3, 4, 6])('at %i pixels, a little out of focus as well', async (pixelsPerModule) => {
    expect(await countReads({ pixelsPerModule }, { noise: 6, blur: 0.8 })).toBe(TURNS.length);
  });

  test('held at a slant', async () => {
    expect(await countReads({ pixelsPerModule: 5, tilt: 0.25 }, { noise: 6, blur: 0.6 })).toBe(TURNS.length);
  });

  test('light on dark', async () => {
    expect(await countReads({ pixelsPerModule: 4, isInverted: true }, { noise: 6 })).toBe(TURNS.length);
  });

  test('in front of stripes', async () => {
    expect(await countReads({ pixelsPerModule: 4 }, { noise: 6, background: 'stripes' })).toBe(TURNS.length);
  });
});

describe('where there is no card', () => {
  test.each(['blobs', 'noise', 'stripes', 'squares', 'rings'] as const)(
    '%s are not read as one',
    async (background) => {
      const texts: string[] = [];
      for (let seed = 0; seed < 80; seed++) {
        texts.push(...(await readCodes(drawScene({ width: 400, height: 240, background, noise: 6, seed }))));
      }
      expect(texts).toEqual([]);
    },
  );

  test('a card too small or too soft to read gives nothing rather than something else', async () => {
    await countReads({ pixelsPerModule: 1.5 }, { noise: 12 });
    await countReads({ pixelsPerModule: 3 }, { noise: 25, blur: 2 });
  });

  test('a card cut off by the edge of the picture gives nothing', async () => {
    const whole = drawScene({ width: 300, height: 300, card: { text: CARD, pixelsPerModule: 8 } });
    const upper = { ...whole, height: 180, luma: whole.luma.slice(0, 300 * 180) };
    expect(await readCodes(whole)).toEqual([CARD]);
    expect(await readCodes(upper)).toEqual([]);
  });
});

test('the class clock and foreign codes are read as they are', async () => {
  for (const text of [formatClockCard(1_747_316_820_400), 'https://harbour.example/menu', 'Größe: 8 €']) {
    expect(
      await readCodes(drawScene({ width: 640, height: 360, card: { text, pixelsPerModule: 4 } })),
    ).toEqual([text]);
  }
});
