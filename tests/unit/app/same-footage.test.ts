import { expect, test } from 'vitest';
import type { ClipReading } from '../../../src-core/app/clip-reading.ts';
import { findSameFootageFlags } from '../../../src-core/app/same-footage.ts';
import { createPrintReader, type MotionPrint } from '../../../src-core/evidence/motion-print.ts';
import { getFlagKey } from '../../../src-core/matching/flag.ts';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';

/** Somebody who walks about for twelve seconds, in another way for each seed. */
function buildPrint(seed: number): MotionPrint {
  const walk = seededRandom(seed);
  const reader = createPrintReader(80, 45);
  for (let second = 0; second < 12; second++) {
    const [x, y] = [walk() * 80, walk() * 45];
    reader.push(
      Uint8Array.from({ length: 80 * 45 }, (_, at) =>
        Math.hypot((at % 80) - x, Math.floor(at / 80) - y) < 9 ? 200 : 60 + (at % 7),
      ),
    );
  }
  return reader.finish();
}

const buildClip = (id: string, seed: number) =>
  ({ id, evidence: { print: buildPrint(seed) } }) as unknown as ClipReading;

test('footage handed in three times is flagged at the second and the third, each once, and at nothing else', () => {
  const clips = [buildClip('a', 1), buildClip('b', 1), buildClip('other', 2), buildClip('c', 1)];
  const squadOf = new Map(clips.map(({ id }) => [id, 'teal']));
  const flags = findSameFootageFlags(clips, { squadOf });
  expect(flags.map(({ clip }) => clip)).toEqual(['b', 'c']);
  expect(new Set(flags.map(getFlagKey)).size).toBe(flags.length);
});
