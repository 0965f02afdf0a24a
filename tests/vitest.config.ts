import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { startThreadsBundled } from './setup/bundled-threads.ts';
import { LongestFirst } from './setup/longest-first.ts';

const setup = (name: string) => fileURLToPath(new URL(`./setup/${name}.ts`, import.meta.url));

const setupFiles = ['fail-on-console', 'fail-on-other-host'].map(setup);

const CORES = availableParallelism();

/** Films, spawns and waits: time enough for a busy machine, for how quick things are is for the bench to say. */
const patient = {
  setupFiles,
  testTimeout: 600_000,
  hookTimeout: 600_000,
};

// Three projects: `architecture` reads the source, `unit` is everything quick, `app` runs whole programs on real films,
// kills some, and drives a browser (`*.window.test.ts`). They share one queue and its workers, so that no core waits for
// the last file of a project.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: 'node_modules/.cache/vite',
  plugins: [startThreadsBundled()],
  test: {
    // The files of a worker share their modules, which take longer to load than most files to run: no file may leave
    // anything behind.
    isolate: false,
    // Some files wait more than they work: for other programs, for a page, and for the moment to kill them.
    maxWorkers: CORES + 1,
    passWithNoTests: true,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          ...patient,
          name: 'architecture',
          include: ['tests/architecture/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          ...patient,
          name: 'unit',
          include: ['tests/{unit,reference,contract}/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          ...patient,
          name: 'app',
          expect: { poll: { timeout: 60_000 } },
          globalSetup: [setup('grade-demo'), setup('build-page')],
          include: ['tests/app/**/*.test.ts'],
        },
      },
    ],
  },
});
