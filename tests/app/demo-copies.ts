import { copyFile, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { linkDemoEvidence, linkFolder } from './link-folder.ts';

/** Copies of the demo lesson, each in a folder of its own. */
export interface DemoCopies {
  /** The lesson that is copied, with the evidence of an earlier grading. Not to be touched. */
  readonly getBase: () => string;
  /**
   * A lesson to spoil. Its clips are the base's own files under a second name: rename and remove them at will, but
   * never write into one. That way a clip that the program wrote into would spoil the base, and be noticed.
   */
  readonly copy: (options?: { readonly evidence?: boolean }) => Promise<string>;
}

/** Builds the demo before the tests of a file, and removes everything after them. */
export function useDemoCopies(): DemoCopies {
  let parent = '';
  let count = 0;
  const getBase = () => path.join(parent, 'base');
  beforeAll(async () => {
    parent = await mkdtemp(path.join(tmpdir(), 'routemark-copies-'));
    await buildDemoLesson(getBase());
    await linkDemoEvidence(getBase());
  });
  afterAll(() => rm(parent, { recursive: true, force: true }));
  return {
    getBase,
    copy: async ({ evidence = true } = {}) => {
      count += 1;
      const folder = path.join(parent, `lesson ${count}`);
      await mkdir(folder);
      for (const name of ['plan.json', 'roster.csv']) {
        await copyFile(path.join(getBase(), name), path.join(folder, name));
      }
      await linkFolder(path.join(getBase(), 'clips'), path.join(folder, 'clips'));
      if (evidence) await linkFolder(path.join(getBase(), 'evidence'), path.join(folder, 'evidence'));
      return folder;
    },
  };
}
