import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ROOT } from './source-tree.ts';

/** Licences of packages that name theirs in a form that npm does not copy into the lock file, or in their LICENSE alone. */
const NAMED_IN_FULL: Readonly<Record<string, string>> = {
  async: 'MIT',
  'parse-cache-control': 'BSD-3-Clause',
  'png-js': 'MIT',
};

/** Licences that a packaged copy under MIT may carry; the GPL program ffmpeg stays a process of its own. */
const ACCEPTED = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'OFL-1.1',
  '(MIT OR CC0-1.0)',
];

interface LockFile {
  readonly packages: Readonly<Record<string, { readonly dev?: boolean; readonly license?: string }>>;
}

function listRuntimePackages(): [name: string, licence: string][] {
  const lock: LockFile = JSON.parse(readFileSync(`${ROOT}package-lock.json`, 'utf8'));
  const entries = Object.entries(lock.packages).filter(([place, entry]) => place !== '' && !entry.dev);
  const named = entries.map(([place, entry]): [string, string] => {
    const name = place.split('node_modules/').at(-1) ?? '';
    return [name, NAMED_IN_FULL[name] ?? entry.license ?? 'unknown'];
  });
  return [...new Map(named)].sort(([one], [other]) => one.localeCompare(other, 'en'));
}

function listNotices(): [name: string, licence: string][] {
  const notices = readFileSync(`${ROOT}electron/packaging/third-party-notices.md`, 'utf8');
  const rows = [...notices.matchAll(/^\| (\S+) \| (.+) \|$/gm)].filter(([, name]) => name !== 'package');
  return rows
    .map(([, name = '', licence = '']): [string, string] => [name, licence])
    .sort(([one], [other]) => one.localeCompare(other, 'en'));
}

test('the third-party notices list every package that Routemark runs with, under its licence', () => {
  expect(listNotices()).toEqual(listRuntimePackages());
});

test('every licence can stand beside ours, the separate program ffmpeg aside', () => {
  const others = listRuntimePackages().filter(([, licence]) => !ACCEPTED.includes(licence));
  expect(others).toEqual([['ffmpeg-static', 'GPL-3.0-or-later']]);
});
