import { expect, test } from 'vitest';
import { readMovement } from '../../../src-core/evidence/clip-movement.ts';
import { defineMovementAnalyser } from '../../../src-core/host/analysers.ts';
import { makeMotion } from '../evidence/made-motion.ts';

/** Three performers who slow down, one of them late, one without the fourth rep, while somebody walks through. */
const MOTION = makeMotion(
  [{ columns: [2, 4] }, { columns: [8, 4], lagSeconds: 0.2 }, { columns: [14, 4], missed: [3] }],
  { cycleSeconds: 1.7, cycles: 7, drift: 0.1, noise: 0.3, walkInAtSeconds: 6 },
);

/** What this version reads of it, numbers to the fourth place. */
const READ = {
  version: 4010,
  count: 7,
  confidence: 0.6738,
  endsSeconds: [3.7531, 5.4, 7.1333, 8.8, 10.4864, 12.2197, 14.0398],
  score: 0.8763,
  lagsSeconds: [-0.0663, 0.1325, -0.0621],
};

// Fails where reps or unison are read in another way than before. Then count the version in `analysers.ts` up, so that
// kept evidence is read anew, and write down here what is read now.
test('a movement that is read in another way has another version', () => {
  const { reps, unison } = readMovement(MOTION, {
    reps: { counting: 'cycle' },
    unison: { toleranceSeconds: 0.3 },
  });
  const near = (value: number) => expect.closeTo(value, 4);
  expect({
    version: defineMovementAnalyser('').version,
    count: reps.count,
    confidence: reps.confidence,
    endsSeconds: reps.timesSeconds,
    score: unison?.score,
    lagsSeconds: unison?.lanes.map(({ lagSeconds }) => lagSeconds),
  }).toEqual({
    ...READ,
    confidence: near(READ.confidence),
    endsSeconds: READ.endsSeconds.map(near),
    score: near(READ.score),
    lagsSeconds: READ.lagsSeconds.map(near),
  });
});
