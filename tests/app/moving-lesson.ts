import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { motionAnalyser } from '../../src-core/host/analysers.ts';
import { readSampleHash } from '../../src-core/host/content-hash.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { watchClip } from '../../src-core/host/watch-clip.ts';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { type MadePerformer, makeMotion } from '../unit/evidence/made-motion.ts';

/** Teal's three at station A, of whom two stand so close that they are seen as one, the right one of them late. */
const CLOSE: readonly MadePerformer[] = [
  { columns: [3, 3] },
  { columns: [6, 3], lagSeconds: 0.6 },
  { columns: [14, 4] },
];
/** Amber's two, in step. */
const APART: readonly MadePerformer[] = [{ columns: [3, 4] }, { columns: [13, 4] }];

/** When the first rep of each begins. */
export const STARTS_AT_SECONDS = { teal: 2, amber: 5 } as const;

const LENGTH_SECONDS = 24;

/** The small lesson, in which both squads' clips of station A were watched and show eight reps of two seconds. */
export async function writeMovingLesson(folder: string): Promise<void> {
  await writeSmallLesson(folder, LENGTH_SECONDS);
  const plan = path.join(folder, 'plan.json');
  const text = await readFile(plan, 'utf8');
  await writeFile(plan, text.replace('"checks": "judgement"', '"checks": "together"'));
  await move(path.join(folder, 'clips', 'teal', 'IMG_1000.MP4'), CLOSE, STARTS_AT_SECONDS.teal);
  await move(path.join(folder, 'clips', 'amber', 'IMG_1002.MP4'), APART, STARTS_AT_SECONDS.amber);
}

async function move(
  file: string,
  performers: readonly MadePerformer[],
  startsAtSeconds: number,
): Promise<void> {
  const cache = openEvidenceCache(path.join(file, '../../../evidence'));
  const contentId = (await readSampleHash(file)).slice(0, 16);
  await watchClip(cache, { path: file, contentId });
  const motion = makeMotion(performers, { cycleSeconds: 2, cycles: 8, startsAtSeconds });
  await cache.write(contentId, motionAnalyser, motion);
}
