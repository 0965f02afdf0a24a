import { expect, test } from 'vitest';
import { measureTravel } from '../../../src-core/signal/cycle-travel.ts';
import { makeMotion } from '../evidence/made-motion.ts';

test('the way from turn to turn is as far as the flow laid end to end', () => {
  const motion = makeMotion([{ columns: [4, 4] }], { cycleSeconds: 2, cycles: 6, noise: 0 });
  const v = motion.v.map((_, at) => {
    const frame = Math.floor(at / (motion.columns * motion.rows));
    // 3 pixels down and up again, in 30 frames.
    return frame === 0
      ? 0
      : 1.5 * (Math.cos((Math.PI * (frame - 1)) / 15) - Math.cos((Math.PI * frame) / 15));
  });
  const still = { ...motion, u: motion.u.map(() => 0) };
  const scale = 80 / Math.max(motion.width, motion.height);
  const travel = measureTravel({ ...still, v }, (frame) => frame / 30);
  expect(travel / scale).toBeGreaterThan(2.7);
  expect(travel / scale).toBeLessThan(3.2);
  // A steady drift is no movement to and fro, and no frame at all is none either.
  expect(measureTravel({ ...still, v: v.map(() => 0.4) }, (frame) => frame / 30)).toBeLessThan(0.5);
  expect(measureTravel({ ...still, v }, () => Number.NaN)).toBe(0);
});
