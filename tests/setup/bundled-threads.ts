import { pathToFileURL } from 'node:url';
import type { Plugin } from 'vite';
import { bundleProgram, placeBuilds } from '../app/bundle-program.ts';

const POOL = /src-core\/host\/analysis-pool\.ts$/;
const WORKER = new URL('../../src-core/host/analysis-worker.ts', import.meta.url);

/**
 * Lets the pool of every test start its threads from one bundle, as the shell does: translated from source, each
 * thread would take a second of a processor before its first task.
 */
export function startThreadsBundled(): Plugin {
  // Before any process of a test starts, so that all of them find the same place.
  placeBuilds();
  return {
    name: 'threads-bundled',
    transform: {
      filter: { id: POOL },
      handler: (code) =>
        code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(bundleProgram(WORKER)).href)),
    },
  };
}
