import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { openPageFiles } from '../../../src-core/host/page-files.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

/** A page as the build leaves it: assets named by their content. */
function buildPage(): string {
  const folder = makeTemporaryFolder();
  mkdirSync(path.join(folder, 'assets'));
  writeFileSync(path.join(folder, 'index.html'), '<script nonce="__CSP_NONCE__"></script>');
  writeFileSync(path.join(folder, 'assets', 'index-1a2b3c.js'), 'start()');
  return folder;
}

test('the page is asked for anew each time, with a nonce of its own; what it names by content is kept', async () => {
  const files = await openPageFiles(buildPage());
  const pages = await Promise.all([files?.answer('/'), files?.answer('/index.html')]);
  expect(pages.map((page) => page?.headers.get('cache-control'))).toEqual(['no-store', 'no-store']);
  const [one, other] = await Promise.all(pages.map((page) => page?.text()));
  expect(one).toMatch(/nonce="[\w+/]{22}=="/);
  expect(one).not.toBe(other);
  const asset = await files?.answer('/assets/index-1a2b3c.js');
  expect(asset?.headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
  expect(await asset?.text()).toBe('start()');
});

test('nothing beside the page’s own files is given, however it is asked for', async () => {
  const folder = buildPage();
  const files = await openPageFiles(path.join(folder, 'assets', '..'));
  for (const asked of ['/../secret', '/assets/../../secret', '/assets/%2e%2e/index.html', '/assets', ''])
    expect(await files?.answer(asked)).toBeNull();
  expect(await openPageFiles(path.join(folder, 'assets'))).toBeNull();
});
