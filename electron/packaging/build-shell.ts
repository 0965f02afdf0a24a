// Bundles the desktop shell: the main process as a module, the preload as the one CommonJS file that the sandbox asks
// for. Packages stay outside: some bring programs and WebAssembly along.

import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const shared = {
  absWorkingDir: ROOT,
  bundle: true,
  platform: 'node',
  logLevel: 'warning',
  legalComments: 'none',
} as const;

await build({
  ...shared,
  entryPoints: ['electron/main/main.ts'],
  outfile: 'dist/electron/main.mjs',
  format: 'esm',
  target: 'node22',
  packages: 'external',
});

await build({
  ...shared,
  entryPoints: ['electron/preload/preload.ts'],
  outfile: 'dist/electron/preload.cjs',
  format: 'cjs',
  target: 'chrome140',
  external: ['electron'],
});
