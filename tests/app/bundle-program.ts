import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** A program beside this file as one file near the packages it needs, so that a start takes no longer than Node itself. */
export async function bundleProgram(name: string): Promise<string> {
  const outfile = fileURLToPath(new URL(`../../node_modules/.cache/routemark-${name}.mjs`, import.meta.url));
  await build({
    entryPoints: [fileURLToPath(new URL(`./${name}.ts`, import.meta.url))],
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outfile,
  });
  return outfile;
}
