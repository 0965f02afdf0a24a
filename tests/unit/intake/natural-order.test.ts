import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareNames } from '../../../src-core/intake/natural-order.ts';

test('people count: nine comes before ten', () => {
  const names = ['IMG_10.MOV', 'IMG_9.MOV', 'IMG_100.MOV', 'IMG_1.MOV'];
  expect(names.sort(compareNames)).toEqual(['IMG_1.MOV', 'IMG_9.MOV', 'IMG_10.MOV', 'IMG_100.MOV']);
});

test('agrees with Intl.Collator’s numeric order (ECMA-402) where that tells two names apart', () => {
  const oracle = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  const name = fc.stringMatching(/^[A-Za-z_]{1,4}\d{1,5}\.(MOV|mp4)$/);
  fc.assert(
    fc.property(name, name, (a, b) => {
      const expected = oracle.compare(a, b);
      if (expected !== 0) expect(Math.sign(compareNames(a, b))).toBe(Math.sign(expected));
      else expect(compareNames(a, b) === 0).toBe(a === b);
    }),
    { numRuns: 500 },
  );
});
