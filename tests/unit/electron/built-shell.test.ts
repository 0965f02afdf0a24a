import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { createAnalysisPool } from '../../../src-core/host/analysis-pool.ts';
import { formatStationCard } from '../../../src-core/lesson/card-text.ts';
import { filmClip } from '../host/film-clip.ts';
import { makeTemporaryFolder } from '../host/temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const TEXT = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });
const { files } = JSON.parse(readFileSync('electron/packaging/builder.json', 'utf8'));
const { dependencies, optionalDependencies } = JSON.parse(readFileSync('package.json', 'utf8'));

describe('the built shell', () => {
  // Below node_modules, where the packages that stay outside are found.
  const folder = path.join(ROOT, 'node_modules', '.cache', `routemark-shell-${process.pid}`);

  beforeAll(() => {
    mkdirSync(folder, { recursive: true });
    const args = ['--import', 'tsx', 'electron/packaging/build-shell.ts', folder];
    expect(spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' }).status).toBe(0);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('looks at a clip in a thread of its own', async () => {
    const shared = { bundle: true, platform: 'node', format: 'esm', packages: 'external' } as const;
    // The pool as main.mjs has it within, at the same place.
    const outfile = path.join(folder, 'pool.mjs');
    buildSync({ ...shared, entryPoints: [path.join(ROOT, 'src-core/host/analysis-pool.ts')], outfile });
    const built = (await import(pathToFileURL(outfile).href)) as {
      readonly createAnalysisPool: typeof createAnalysisPool;
    };
    const place = makeTemporaryFolder();
    const card = { text: TEXT, pixelsPerModule: 4 };
    const clip = { path: await filmClip(path.join(place, 'clip.mp4'), { shots: [{ seconds: 1, card }] }) };
    const pool = built.createAnalysisPool(1);
    const done = await pool.run({
      kind: 'look',
      cacheFolder: path.join(place, 'evidence'),
      clip: { ...clip, contentId: 'c1' },
      searchCards: true,
    });
    await pool.close();
    expect(done).toMatchObject({ ok: true, value: { problems: [] } });
    expect(done.ok && done.value.readings.map(({ text }) => text)).toContain(TEXT);
  });
});

/** What goes into the shell and into the package, as the bundler finds it. */
const { inputs, outputs } = buildSync({
  absWorkingDir: ROOT,
  entryPoints: [
    'electron/main/main.ts',
    'src-core/host/analysis-worker.ts',
    'electron/main/film-demo-process.ts',
    'fixtures/film/film-process.ts',
  ],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  outdir: 'nowhere',
  write: false,
  metafile: true,
}).metafile;

const listSources = (isWanted: (name: string) => boolean) =>
  Object.entries(outputs)
    .filter(([name]) => isWanted(name))
    .flatMap(([, output]) => Object.keys(output.inputs));

test('the shell is built anew by npm start when any of its sources changes', () => {
  const start = readFileSync('scripts/start.mjs', 'utf8');
  const [, named = ''] = /'dist\/electron\/main\.mjs',\s*\[([^\]]*)\]/.exec(start) ?? [];
  const folders = [...named.matchAll(/'([^']+)'/g)].map(([, folder]) => `${folder}/`);
  const sources = listSources((name) => !name.includes('film-'));
  expect(sources.length).toBeGreaterThan(100);
  expect(sources.filter((source) => !folders.some((folder) => source.startsWith(folder)))).toEqual([]);
});

describe('the package', () => {
  test('holds every source of what it runs unbundled: the filming of the demo', () => {
    const filmed = listSources((name) => name.includes('film-'));
    const isHeld = (source: string) =>
      files.some(
        (kept: string) => source === kept || (kept.endsWith('/**') && source.startsWith(kept.slice(0, -2))),
      );
    expect(filmed.length).toBeGreaterThan(20);
    expect(filmed.filter((source) => !isHeld(source))).toEqual([]);
  });

  test('asks for no package that only developers have', () => {
    const packages = Object.values(inputs)
      .flatMap(({ imports }) => imports.filter(({ external }) => external))
      .map(({ path: name }) => name.match(/^(?:@[^/]+\/)?[^/]+/)?.[0] ?? name)
      .filter((name) => !isBuiltin(name) && name !== 'electron');
    expect(packages).toContain('zxing-wasm');
    const shipped = { ...dependencies, ...optionalDependencies };
    expect([...new Set(packages)].filter((name) => !(name in shipped))).toEqual([]);
  });
});
