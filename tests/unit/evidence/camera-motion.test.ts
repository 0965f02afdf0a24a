import { describe, expect, test } from 'vitest';
import { describeCamera } from '../../../src-core/evidence/camera-motion.ts';

/** Ten seconds of camera steps to the right, in pixels of a picture 80 wide. */
const filmed = (getStep: (frame: number) => number) => {
  const frameCount = 150;
  const none = new Float32Array(frameCount);
  const camera = Float32Array.from({ length: frameCount * 4 }, (_, at) =>
    at % 4 === 0 && at > 0 ? getStep(at / 4) : 0,
  );
  return {
    ...{ rateHz: 15, fromSeconds: 0, width: 80, height: 45, columns: 1, rows: 1, frameCount },
    ...{ u: none, v: none, camera, fine: { columns: 1, rows: 1, u: none, v: none } },
  };
};

describe('the tablet’s own movement', () => {
  test('is its speed in picture widths a second', () => {
    expect(describeCamera(filmed(() => 1)).widthsPerSecond).toBeCloseTo(15 / 80, 6);
  });

  test('is nearly none for a tremble', () => {
    expect(describeCamera(filmed((frame) => (frame % 2 === 0 ? 0.5 : -0.5))).widthsPerSecond).toBeLessThan(
      0.001,
    );
  });

  test('is none for a still', () => {
    const still = { ...filmed(() => 0), frameCount: 1 };
    expect(describeCamera(still).widthsPerSecond).toBe(0);
  });
});
