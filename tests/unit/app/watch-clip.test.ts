import { expect, test } from 'vitest';
import { watchClip } from '../../../src-core/app/read-evidence.ts';
import type { EvidenceProblem } from '../../../src-core/evidence/evidence-problem.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';
import { CLEAN, grade } from './small-clips.ts';

const PRINT = { seconds: ['a'] };

/** The print that a clip has once it was watched with these problems; null: it counts as not watched. */
async function watchWith(...problems: readonly EvidenceProblem[]) {
  const [clip] = grade(CLEAN).squads.flatMap(({ clips }) => clips);
  if (!clip) throw new Error('the small lesson has clips');
  const ports = {
    watch: async () => ({ print: PRINT, problems }),
    lookAt: async () => ({ readings: [], look: null, problems: [] }),
  };
  return (await watchClip(ports, clip.reading, { plan: buildSmallPlan() })).evidence.print;
}

test('a clip counts as watched where all went well, and where it is itself at fault', async () => {
  expect(await watchWith()).toEqual(PRINT);
  expect(await watchWith({ code: 'decode-failed', detail: 'moov atom not found' })).toEqual(PRINT);
  expect(await watchWith({ code: 'decode-cut-short', lastSeconds: 4, detail: '' })).toEqual(PRINT);
});

test('a clip is left to be watched where anything else stood in the way', async () => {
  const passing: readonly EvidenceProblem[] = [
    { code: 'decode-interrupted', detail: 'ended by SIGKILL' },
    { code: 'decode-timed-out', limitSeconds: 60 },
    { code: 'decode-cancelled' },
    { code: 'ffmpeg-missing', tried: [] },
    { code: 'analysis-failed', detail: 'out of memory' },
  ];
  for (const problem of passing) expect(await watchWith(problem)).toBeNull();
  expect(await watchWith({ code: 'decode-failed', detail: '' }, { code: 'decode-cancelled' })).toBeNull();
});
