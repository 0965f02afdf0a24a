import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const setupFiles = ['fail-on-console', 'fail-on-other-host'].map((name) =>
  fileURLToPath(new URL(`./setup/${name}.ts`, import.meta.url)),
);

// Three projects: `architecture` reads the source, `unit` is everything quick, `app` films, spawns and waits.
// `app` runs after the others and one file at a time, so that its processes do not compete with each other.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: 'node_modules/.cache/vite',
  test: {
    maxWorkers: 2,
    passWithNoTests: true,
    projects: [
      {
        extends: true,
        test: {
          name: 'architecture',
          include: ['tests/architecture/**/*.test.ts'],
          setupFiles,
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/{unit,reference,contract}/**/*.test.ts'],
          setupFiles,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'app',
          include: ['tests/app/**/*.test.ts'],
          setupFiles,
          testTimeout: 300_000,
          hookTimeout: 300_000,
          expect: { poll: { timeout: 20_000 } },
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
