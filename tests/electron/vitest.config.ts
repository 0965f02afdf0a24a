import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The shell in real Electron: `npm run test:electron`. Not part of `npm test`, for the binary is not everywhere.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  cacheDir: 'node_modules/.cache/vite',
  test: {
    include: ['tests/electron/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 300_000,
    maxWorkers: 1,
  },
});
