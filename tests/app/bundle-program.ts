import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/', import.meta.url));
const ANALYSIS_WORKER = new URL('../../src-core/host/analysis-worker.ts', import.meta.url);

/** Packages that look for files beside their own source. */
const OUTSIDE = ['fluent-ffmpeg', 'bullmq', 'ioredis'];

/** What packages that are no modules ask for what they need with. */
const REQUIRE =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

/** Where all processes of a run put what they build; whoever first asks takes it away at its own end. */
export function placeBuilds(): string {
  const known = process.env.ROUTEMARK_TEST_BUILDS;
  if (known !== undefined) return known;
  const folder = path.join(CACHE, `routemark-tests-${process.pid}`);
  process.env.ROUTEMARK_TEST_BUILDS = folder;
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/**
 * A program and its analysis threads as a few files with the packages that they need, built once a run: a start
 * then takes little longer than Node itself, where the source is translated and every package sought anew at each. It
 * lies near the packages, for their fonts and WebAssembly.
 */
export function bundleProgram(source: URL): string {
  const name = path.basename(source.pathname, '.ts');
  const outdir = path.join(placeBuilds(), name);
  if (!existsSync(outdir)) bundle(name, source, outdir);
  return path.join(outdir, `${name}.js`);
}

function bundle(name: string, source: URL, outdir: string): void {
  const draft = `${outdir}.${process.pid}`;
  mkdirSync(draft, { recursive: true });
  writeFileSync(path.join(draft, 'package.json'), '{"type": "module"}\n');
  buildSync({
    entryPoints: { [name]: fileURLToPath(source), 'analysis-worker': fileURLToPath(ANALYSIS_WORKER) },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    banner: { js: REQUIRE },
    external: OUTSIDE,
    outdir: draft,
  });
  try {
    renameSync(draft, outdir);
  } catch (error) {
    // Another process of the run may have been quicker.
    if (!existsSync(outdir)) throw error;
    rmSync(draft, { recursive: true });
  }
}
