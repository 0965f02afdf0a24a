import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';

/** Films the demo lesson into the cache before the first test wants it: two tests at once would each film it. */
export default async function filmDemo(): Promise<void> {
  if (!(await findFfmpeg()).ok) return;
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-filmed-'));
  await buildDemoLesson(path.join(folder, 'demo'));
  await rm(folder, { recursive: true });
}
