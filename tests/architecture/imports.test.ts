import { describe, expect, test } from 'vitest';
import { findBreaches, findCycles, findImpurities } from './check-imports.ts';
import { AREAS, SOLE_USERS } from './rules.ts';
import { readTree, type SourceTree } from './source-tree.ts';

const tree = readTree('src-core', 'renderer', 'fixtures', 'tests', 'electron', 'scripts');

/** A tree of one file, to show that a rule bites. */
function write(path: string, text: string): SourceTree {
  return new Map([[path, text]]);
}

describe('the tree', () => {
  test('imports nothing that the table does not allow', () => {
    expect(findBreaches(tree)).toEqual([]);
  });

  test('has no import cycles, types included', () => {
    expect(findCycles(tree)).toEqual([]);
  });

  test('keeps clocks, chance and the outside out of pure code', () => {
    expect(findImpurities(tree)).toEqual([]);
  });

  test('names only areas that the table knows', () => {
    const folders = AREAS.map((area) => area.folder);
    const named = AREAS.flatMap((area) => [...area.values, ...area.types, ...(area.schemas ?? [])]);
    expect(named.filter((name) => !folders.includes(name))).toEqual([]);
  });
});

describe('the table refuses', () => {
  test.each([
    ['a value of a later stage', 'src-core/lesson/a.ts', "import { b } from '../intake/b.ts';"],
    ['the type of a later stage', 'src-core/lesson/a.ts', "import type { B } from '../intake/b.ts';"],
    ['a value of an unlisted earlier stage', 'src-core/matching/a.ts', "import { b } from '../media/b.ts';"],
    [
      'a lone inline type, which leaves the import',
      'src-core/matching/a.ts',
      "import { type B } from '../media/b.ts';",
    ],
    ['a re-export across stages', 'src-core/marking/a.ts', "export { b } from '../matching/b.ts';"],
    ['a dynamic import', 'src-core/marking/a.ts', "const b = await import('../matching/b.ts');"],
    ['a later type named in place', 'src-core/media/a.ts', "type B = import('../host/b.ts').B;"],
    ['Node in the pure core', 'src-core/app/a.ts', "import { readFile } from 'node:fs/promises';"],
    ['Node without its prefix', 'src-core/host/a.ts', "import { readFile } from 'fs/promises';"],
    ['Node in the page', 'renderer/text/a.ts', "import { join } from 'node:path';"],
    ['a package of files in the pure core', 'src-core/app/a.ts', "import PQueue from 'p-queue';"],
    ['app in the page', 'renderer/client/a.ts', "import { scan } from '../../src-core/app/scan.ts';"],
    ['host types in the page', 'renderer/text/a.ts', "import type { B } from '../../src-core/host/b.ts';"],
    ['one feature in another', 'renderer/features/x/a.ts', "import { b } from '../y/b.ts';"],
    [
      'a function where schemas alone may be used',
      'src-core/contract/a.ts',
      "import { checkPlan } from '../lesson/check-plan.ts';",
    ],
    ['tests in the product', 'src-core/host/a.ts', "import { b } from '../../tests/b.ts';"],
    ['a file of no area', 'elsewhere/a.ts', "import { b } from './b.ts';"],
    ['a path out of the repository', 'src-core/host/a.ts', "import { b } from '../../../other/b.ts';"],
    ['a package in a script', 'scripts/a.mjs', "import { z } from 'zod';"],
  ])('%s', (_, path, text) => {
    expect(findBreaches(write(path, text))).toHaveLength(1);
  });

  test.each(Object.entries(SOLE_USERS))('%s anywhere but in %s', (name, path) => {
    const text = `import x from '${name}';`;
    expect(findBreaches(write('src-core/host/another.ts', text))).toHaveLength(1);
    expect(findBreaches(write(path, text))).toEqual([]);
  });

  test('cycles, even of types', () => {
    const ring = new Map([
      ['src-core/lesson/a.ts', "import type { B } from './b.ts';"],
      ['src-core/lesson/b.ts', "export { c } from './c.ts';"],
      ['src-core/lesson/c.ts', "import { a } from './a.ts';"],
    ]);
    expect(findCycles(ring)).toEqual([
      'src-core/lesson/a.ts → src-core/lesson/b.ts → src-core/lesson/c.ts → src-core/lesson/a.ts',
    ]);
  });

  test.each([
    'Math.random()',
    'Date.now()',
    'new Date()',
    'performance.now()',
    'setTimeout(f, 1)',
    'crypto.randomUUID()',
    'Temporal.Now.instant()',
  ])('%s in pure code', (call) => {
    expect(findImpurities(write('src-core/app/a.ts', `const x = ${call};`)).length).toBeGreaterThan(0);
    expect(findImpurities(write('src-core/host/a.ts', `const x = ${call};`))).toEqual([]);
  });
});

describe('the table allows', () => {
  test.each([
    ['types of any earlier stage', 'src-core/matching/a.ts', "import type { B } from '../media/b.ts';"],
    ['values of a listed stage', 'src-core/intake/a.ts', "import { b } from '../media/b.ts';"],
    ['schemas', 'src-core/contract/a.ts', "import { planSchema } from '../lesson/plan.ts';"],
    [
      'a schema and its type',
      'src-core/contract/a.ts',
      "import { type Plan, planSchema } from '../lesson/plan.ts';",
    ],
    ['packages of pure data', 'src-core/lesson/a.ts', "import { z } from 'zod';"],
    ['their parts', 'src-core/media/a.ts', "import exifr from 'exifr/dist/full.esm.mjs';"],
    ['Node in the host', 'src-core/host/a.ts', "import { readFile } from 'node:fs/promises';"],
    [
      'the shared wording in the command line',
      'src-core/cli/commands/a.ts',
      "import { w } from '../../../renderer/text/w.ts';",
    ],
    [
      'the demo in the command line',
      'src-core/cli/commands/a.ts',
      "import { film } from '../../../fixtures/film.ts';",
    ],
    ['a feature in itself', 'renderer/features/x/a.ts', "import { b } from './parts/b.ts';"],
    ['a date with a given instant', 'src-core/lesson/a.ts', 'const day = new Date(0);'],
  ])('%s', (_, path, text) => {
    expect(findBreaches(write(path, text))).toEqual([]);
    expect(findImpurities(write(path, text))).toEqual([]);
  });
});
