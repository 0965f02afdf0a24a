import { describe, expect, test } from 'vitest';
import {
  comparePrints,
  createPrintReader,
  findSameFootage,
  type MotionPrint,
} from '../../../src-core/evidence/motion-print.ts';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';

interface Take {
  readonly seed: number;
  readonly width?: number;
  readonly height?: number;
  readonly gain?: number;
  readonly noise?: number;
  readonly seconds?: number;
}

/** One place with somebody who walks about in it, each take in another way. */
function print({ seed, width = 80, height = 45, gain = 1, noise = 0, seconds = 12 }: Take): MotionPrint {
  const walk = seededRandom(seed);
  const grain = seededRandom(seed + 77);
  const reader = createPrintReader(width, height);
  for (let second = 0; second < seconds; second++) {
    const [x, y] = [walk(), walk()];
    const luma = Uint8Array.from({ length: width * height }, (_, at) => {
      const [right, down] = [(at % width) / width, Math.floor(at / width) / height];
      const person = Math.hypot(right - x, (down - y) / 2) < 0.15 ? 90 : 0;
      return (
        gain * (60 + 60 * Math.sin(9 * right) * Math.cos(7 * down) ** 2 + person) + noise * (grain() - 0.5)
      );
    });
    reader.push(luma);
  }
  return reader.finish();
}

describe('the print of a clip’s changes', () => {
  test('is kept by another size, other brightness and a codec’s noise', () => {
    const original = print({ seed: 1 });
    expect(comparePrints(original, print({ seed: 1, width: 64, height: 36 }))).toBeGreaterThan(0.9);
    expect(comparePrints(original, print({ seed: 1, gain: 0.8 }))).toBeGreaterThan(0.95);
    expect(comparePrints(original, print({ seed: 1, noise: 12 }))).toBeGreaterThan(0.95);
  });

  test('is another one for every take of the same place', () => {
    for (let seed = 2; seed < 12; seed++) {
      expect(comparePrints(print({ seed: 1 }), print({ seed }))).toBeLessThan(0.5);
    }
  });

  test('says nothing of clips of other length, of too little, or of stillness', () => {
    expect(comparePrints(print({ seed: 1 }), print({ seed: 1, seconds: 20 }))).toBeNull();
    expect(comparePrints(print({ seed: 1, seconds: 2 }), print({ seed: 1, seconds: 2 }))).toBeNull();
    const reader = createPrintReader(80, 45);
    for (let second = 0; second < 9; second++) reader.push(new Uint8Array(3600).fill(90));
    expect(comparePrints(reader.finish(), print({ seed: 1, seconds: 9 }))).toBeNull();
  });

  test('finds the pairs of one footage, each once', () => {
    const clips = [1, 2, 3].map((seed) => ({ clip: `c${seed}`, print: print({ seed }) }));
    const again = { clip: 'sent', print: print({ seed: 2, width: 64, height: 36, noise: 6 }) };
    expect(findSameFootage([...clips, again])).toEqual([['c2', 'sent']]);
  });
});
