import { link, mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';

/** A folder of the same files, to the inode; of all of them, or of those whose name is wanted. Tells how many. */
export async function linkFolder(
  from: string,
  to: string,
  isWanted: (name: string) => boolean = () => true,
): Promise<number> {
  await mkdir(to, { recursive: true });
  let linked = 0;
  for (const entry of await readdir(from, { withFileTypes: true })) {
    const [source, target] = [path.join(from, entry.name), path.join(to, entry.name)];
    if (entry.isDirectory()) linked += await linkFolder(source, target, isWanted);
    else if (isWanted(entry.name)) {
      await link(source, target);
      linked += 1;
    }
  }
  return linked;
}

/** Lays beside a copy of the demo what was read of its clips before the first test. */
export async function linkDemoEvidence(lesson: string): Promise<void> {
  const demo = process.env.ROUTEMARK_GRADED_DEMO;
  if (demo === undefined) throw new Error('the demo was not graded before the tests');
  await linkFolder(path.join(demo, 'evidence'), path.join(lesson, 'evidence'));
}
