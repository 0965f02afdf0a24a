import { describe, expect, test } from 'vitest';
import { formatStationCard, parseCardText } from '../../../src-core/lesson/card-text.ts';
import { buildCardCode } from '../../../src-core/printing/card-code.ts';

const PLAIN = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });

const withAddress = (length: number) =>
  formatStationCard({
    lesson: 'HARBOUR',
    station: 'A',
    revision: 2,
    demonstration: `https://harbour.example/${'k'.repeat(length - 24)}`,
  });

describe('a code on paper', () => {
  test('is at least a tenth as wide as its distance, the usual figure of the printing trade (common practice)', () => {
    for (const text of [PLAIN, withAddress(60), withAddress(200)]) {
      for (const widthMm of [20, 35, 84, 150, 300]) {
        const { distanceMetres } = buildCardCode(text, widthMm);
        expect(distanceMetres * 1000).toBeLessThanOrEqual(widthMm * 10);
        expect(distanceMetres).toBeGreaterThan(0);
      }
    }
  });

  test('of a plain card may lose a third and still be read, from eight tenths of a metre', () => {
    expect(buildCardCode(PLAIN, 84)).toMatchObject({ level: 'H', modules: 25, distanceMetres: 0.8 });
  });

  test('keeps four pixels a module in a filmed picture of 1,920 through 60°: longer texts are held nearer', () => {
    for (const length of [40, 80, 120, 200]) {
      const { modules, widthMm, distanceMetres } = buildCardCode(withAddress(length), 84);
      const seenWidthMm = 2 * Math.tan(Math.PI / 6) * distanceMetres * 1000;
      expect(((widthMm / modules) * 1920) / seenWidthMm).toBeGreaterThanOrEqual(4);
    }
    expect(buildCardCode(withAddress(50), 84)).toMatchObject({ level: 'H', distanceMetres: 0.7 });
    expect(buildCardCode(withAddress(200), 84)).toMatchObject({ level: 'Q', distanceMetres: 0.5 });
  });

  test('says nothing else with an address before it', () => {
    expect(parseCardText(withAddress(120))).toEqual(parseCardText(PLAIN));
  });
});
