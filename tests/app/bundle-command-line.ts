import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const CORE = fileURLToPath(new URL('../../src-core/', import.meta.url));

/**
 * The command line and its analysis threads as two files near the packages that they need, so that a start takes no
 * longer than Node itself: for tests that start it often.
 */
export async function bundleCommandLine(): Promise<string> {
  const outdir = fileURLToPath(new URL('../../node_modules/.cache/routemark-cli', import.meta.url));
  await mkdir(outdir, { recursive: true });
  await writeFile(path.join(outdir, 'package.json'), '{"type": "module"}\n');
  await build({
    entryPoints: { main: `${CORE}cli/main.ts`, 'analysis-worker': `${CORE}host/analysis-worker.ts` },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outdir,
  });
  return path.join(outdir, 'main.js');
}
