import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { gradeFolder } from '../app/grade-folder.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The demo lesson, filmed and graded once for all files; empty without ffmpeg. Its evidence may be linked to. */
    readonly gradedDemo: string;
  }
}

/** Films the demo lesson and looks at its clips before the first test wants them: each test would do so itself. */
export default async function gradeDemo(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-graded-'));
  const demo = path.join(folder, 'demo');
  const hasFfmpeg = (await findFfmpeg()).ok;
  if (hasFfmpeg) {
    await buildDemoLesson(demo);
    await gradeFolder(demo);
  }
  project.provide('gradedDemo', hasFfmpeg ? demo : '');
  return () => rm(folder, { recursive: true });
}
