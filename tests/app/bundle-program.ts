import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/', import.meta.url));
const ANALYSIS_WORKER = new URL('../../src-core/host/analysis-worker.ts', import.meta.url);

/** Packages that look for files beside their own source. */
const OUTSIDE = ['fluent-ffmpeg', 'bullmq', 'ioredis'];

const bundled = new Map<string, string>();

/** What packages that are no modules ask for what they need with. */
const REQUIRE =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

/**
 * A program and its analysis threads as a few files with the packages that they need, built once a process: a start
 * then takes little longer than Node itself, where the source is translated and every package sought anew at each. It
 * lies near the packages, for their fonts and WebAssembly.
 */
export function bundleProgram(source: URL): string {
  const known = bundled.get(source.href);
  if (known !== undefined) return known;
  const program = bundle(path.basename(source.pathname, '.ts'), source);
  bundled.set(source.href, program);
  return program;
}

function bundle(name: string, source: URL): string {
  const outdir = path.join(CACHE, `routemark-${name}-${process.pid}`);
  mkdirSync(outdir, { recursive: true });
  process.once('exit', () => rmSync(outdir, { recursive: true, force: true }));
  writeFileSync(path.join(outdir, 'package.json'), '{"type": "module"}\n');
  buildSync({
    entryPoints: { [name]: fileURLToPath(source), 'analysis-worker': fileURLToPath(ANALYSIS_WORKER) },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    banner: { js: REQUIRE },
    external: OUTSIDE,
    outdir,
  });
  return path.join(outdir, `${name}.js`);
}
