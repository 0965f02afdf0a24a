import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { keepFirstGrading } from '../app/first-grading.ts';
import { gradeFolder } from '../app/grade-folder.ts';

/**
 * Films the demo lesson and looks at its clips once, before the first test of any project wants them; each would do so
 * itself. `ROUTEMARK_GRADED_DEMO` names it from then on; its evidence may be linked to, its first grading be looked at.
 */
export default async function gradeDemo(): Promise<(() => Promise<void>) | undefined> {
  if (process.env.ROUTEMARK_GRADED_DEMO !== undefined || !(await findFfmpeg()).ok) return;
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-graded-'));
  const demo = path.join(folder, 'demo');
  process.env.ROUTEMARK_GRADED_DEMO = demo;
  await buildDemoLesson(demo);
  const { graded } = await gradeFolder(demo);
  await keepFirstGrading(demo, graded);
  return () => rm(folder, { recursive: true });
}
