import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** A program as one file near the packages that it needs, so that a start takes no longer than Node itself. */
export async function bundleProgram(source: URL): Promise<string> {
  const name = path.basename(source.pathname, '.ts');
  const outfile = fileURLToPath(new URL(`../../node_modules/.cache/routemark-${name}.mjs`, import.meta.url));
  await build({
    entryPoints: [fileURLToPath(source)],
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outfile,
  });
  return outfile;
}
