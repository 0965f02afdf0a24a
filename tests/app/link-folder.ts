import { link, mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';

/** A folder of the same files, to the inode. */
export async function linkFolder(from: string, to: string): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const entry of await readdir(from, { withFileTypes: true })) {
    const [source, target] = [path.join(from, entry.name), path.join(to, entry.name)];
    if (entry.isDirectory()) await linkFolder(source, target);
    else await link(source, target);
  }
}

/** Lays beside a copy of the demo what was read of its clips before the first test. */
export function linkDemoEvidence(lesson: string): Promise<void> {
  const demo = process.env.ROUTEMARK_GRADED_DEMO;
  if (demo === undefined) throw new Error('the demo was not graded before the tests');
  return linkFolder(path.join(demo, 'evidence'), path.join(lesson, 'evidence'));
}
