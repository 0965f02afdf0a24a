import { expect, test } from 'vitest';
import { motionAnalyser } from '../../../src-core/host/analysers.ts';
import { createMotionReader } from '../../../src-core/signal/motion-reader.ts';
import { drawFrame } from '../signal/drawn-frames.ts';

/** What this version reads of two pictures: the camera's step, and how much flows in all cells together. */
const READ = { version: 4, camera: [0.6028, 0.0039, -0.0001, 0.0103], flow: 28.0825, fineFlow: 84.3626 };

// Fails where motion is read in another way than before. Then count the version in `analysers.ts` up, so that kept
// evidence is read anew, and write down here what is read now.
test('motion that is read in another way has another version', () => {
  const reader = createMotionReader({ width: 80, height: 45, rateHz: 15 });
  reader.push(drawFrame({}, [{ x: 30, y: 22, radius: 8 }]));
  reader.push(drawFrame({ moveX: 0.6, turn: 0.01, gain: 0.97 }, [{ x: 32, y: 21, radius: 8 }]));
  const { camera, u, v, fine } = reader.finish();
  const sum = (plane: Float32Array, other: Float32Array) =>
    plane.reduce((all, value, at) => all + Math.hypot(value, other[at] ?? 0), 0);
  const near = (value: number) => expect.closeTo(value, 4);
  expect({
    version: motionAnalyser.version,
    camera: [...camera.subarray(4)],
    flow: sum(u, v),
    fineFlow: sum(fine.u, fine.v),
  }).toEqual({
    ...READ,
    camera: READ.camera.map(near),
    flow: near(READ.flow),
    fineFlow: near(READ.fineFlow),
  });
});
