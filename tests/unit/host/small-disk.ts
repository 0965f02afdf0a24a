import { spawnSync } from 'node:child_process';
import { onTestFinished } from 'vitest';
import { makeTemporaryFolder } from './temporary-folder.ts';

/**
 * A disk of its own with room for `kilobytes`, mounted for one test; null where this system does not let us mount
 * one (it takes Linux and the right to mount).
 */
export function mountSmallDisk(kilobytes: number): string | null {
  const folder = makeTemporaryFolder();
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'routemark-test', folder]);
  if (mounted.status !== 0) return null;
  onTestFinished(() => {
    spawnSync('umount', [folder]);
  });
  return folder;
}
