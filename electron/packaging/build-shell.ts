// Bundles the desktop shell: the main process and its analysis threads as modules, the preload as the one CommonJS file
// that the sandbox asks for. Packages stay outside: some bring programs and WebAssembly along. Into `dist/electron`, or
// the folder given.

import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const [folder = 'dist/electron'] = process.argv.slice(2);

const shared = {
  absWorkingDir: ROOT,
  bundle: true,
  platform: 'node',
  logLevel: 'warning',
  legalComments: 'none',
} as const;

const ours = { ...shared, format: 'esm', target: 'node22', packages: 'external' } as const;

await build({ ...ours, entryPoints: ['electron/main/main.ts'], outfile: path.join(folder, 'main.mjs') });

// The pool in the main process starts it by this name, beside itself.
await build({
  ...ours,
  entryPoints: ['src-core/host/analysis-worker.ts'],
  outfile: path.join(folder, 'analysis-worker.js'),
});

await build({
  ...shared,
  entryPoints: ['electron/preload/preload.ts'],
  outfile: path.join(folder, 'preload.cjs'),
  format: 'cjs',
  target: 'chrome140',
  external: ['electron'],
});
