import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { motionAnalyser } from '../../src-core/host/analysers.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { watchClip } from '../../src-core/host/watch-clip.ts';
import type { MotionSeries } from '../../src-core/signal/motion-series.ts';

/** Real clips with counts written by the authors of their data set; for measuring alone, and not part of this project. */
export const FOOTAGE = fileURLToPath(new URL('../../../shared/footage/', import.meta.url));

/** A clip and its true count. */
export interface FootageClip {
  readonly file: string;
  readonly count: number;
}

/** The clips; null where the folder is absent. */
export function findFootage(): readonly FootageClip[] | null {
  const list = `${FOOTAGE}counts.json`;
  return existsSync(list) ? (JSON.parse(readFileSync(list, 'utf8')) as FootageClip[]) : null;
}

/** A file's motion, as watching it leaves it in the evidence. */
export async function readFileMotion(file: string): Promise<MotionSeries> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-footage-'));
  try {
    const cache = openEvidenceCache(folder);
    const { problems } = await watchClip(cache, { path: file, contentId: 'clip' });
    const motion = await cache.read('clip', motionAnalyser);
    if (!motion) throw new Error(`${file}: ${JSON.stringify(problems)}`);
    return motion;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
