import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const CORE = fileURLToPath(new URL('../../src-core/', import.meta.url));
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/', import.meta.url));

let program: string | null = null;

/**
 * The command line and its analysis threads as two files near the packages that they need, built once a process: a
 * start then takes no longer than Node itself, where the source is translated anew at each.
 */
export function getCommandLine(): string {
  program ??= bundle(path.join(CACHE, `routemark-cli-${process.pid}`));
  return program;
}

function bundle(outdir: string): string {
  mkdirSync(outdir, { recursive: true });
  process.once('exit', () => rmSync(outdir, { recursive: true, force: true }));
  writeFileSync(path.join(outdir, 'package.json'), '{"type": "module"}\n');
  buildSync({
    entryPoints: { main: `${CORE}cli/main.ts`, 'analysis-worker': `${CORE}host/analysis-worker.ts` },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outdir,
  });
  return path.join(outdir, 'main.js');
}
