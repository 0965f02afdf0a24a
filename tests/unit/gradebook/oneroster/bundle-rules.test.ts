import { describe, expect, test } from 'vitest';
import { BUNDLE_RULES } from '../../../../src-core/gradebook/oneroster/bundle-fault.ts';
import { type Bundle, checkBundle } from '../../../../src-core/gradebook/oneroster/check-bundle.ts';
import { TABLES } from '../../../../src-core/gradebook/oneroster/tables.ts';
import { addColumn, edit, editText, MUTATIONS, setDelta } from './mutations.ts';
import { buildManifest, buildSchoolSet, type RawSet, toBundle } from './school.ts';

// Each rule of 1EdTech OneRoster v1.2 CSV Binding, section 3, and of its tables, is broken once in a sound set.

/** A sound set of marks around the school's rows. */
function buildMarksSet(version: '1.1' | '1.2' = '1.2'): RawSet {
  const set = buildSchoolSet(version);
  const put = (table: string, ...rows: Record<string, string>[]) => {
    const heads = TABLES[version][table]?.map(({ name }) => name);
    if (!heads) return;
    set[table] = [heads, ...rows.map((row) => heads.map((name) => row[name] ?? ''))];
  };
  put('categories', { sourcedId: 'cat', title: 'Circuits', weight: '20' });
  put('lineItems', {
    sourcedId: 'li',
    title: 'Harbour',
    assignDate: '2025-05-15',
    dueDate: '2025-05-15',
    classSourcedId: 'class-kelp',
    categorySourcedId: 'cat',
    academicSessionSourcedId: 'gp-may',
    gradingPeriodSourcedId: 'gp-may',
    resultValueMin: '1',
    resultValueMax: '4',
    schoolSourcedId: 'org-quay',
  });
  put('results', {
    sourcedId: 'res',
    lineItemSourcedId: 'li',
    studentSourcedId: 'k-0412',
    scoreStatus: 'fully graded',
    score: '3',
    scoreDate: '2025-05-16',
  });
  put('scoreScales', {
    sourcedId: 'scale',
    title: 'Letters',
    type: 'letter',
    orgSourcedId: 'org-quay',
    courseSourcedId: 'course-pe',
    classSourcedId: 'class-kelp',
    scoreScaleValue: '{A+:100},{A:94},{A-:90}',
  });
  set.manifest = buildManifest(version, Object.keys(set));
  return set;
}

const rulesOf = (bundle: Bundle) => [...new Set(checkBundle(bundle).faults.map(({ rule }) => rule))];

/** A set of changes, in which instants are asked for. */
function buildDeltaSet(): RawSet {
  const set = buildMarksSet();
  setDelta(set);
  for (const row of (set.orgs ?? []).slice(1)) {
    row[1] = 'active';
    row[2] = '2012-04-23T18:25:43.511Z';
  }
  return set;
}

describe('a sound OneRoster set', () => {
  test.each(['1.1', '1.2'] as const)('of version %s breaks no rule', (version) => {
    const found = checkBundle(toBundle(buildSchoolSet(version)));
    expect(found.faults).toEqual([]);
    expect(found.version).toBe(version);
  });

  test('with marks breaks none either, nor does a set of changes', () => {
    expect(rulesOf(toBundle(buildMarksSet()))).toEqual([]);
    expect(rulesOf(toBundle(buildDeltaSet()))).toEqual([]);
  });

  test('may begin with a byte-order mark, have columns of its own at the right and words with ext:', () => {
    const set = buildMarksSet();
    addColumn(set, 'categories', 'metadata.colour');
    edit(set, ['orgs', 2, 'type'], 'ext:island');
    const marked = editText('users.csv', (text) => `\uFEFF${text}`)(toBundle(set));
    expect(rulesOf(marked)).toEqual([]);
  });

  test('may have the users.csv of 1.2 or of the corrected 1.2.1', () => {
    const set = buildMarksSet();
    const at = (set.users?.[0]?.indexOf('userMasterIdentifier') ?? 0) + 1;
    addColumn(set, 'users', 'resourceSourcedIds', at);
    expect(rulesOf(toBundle(set))).toEqual([]);
  });

  test('may be a manifest alone: nothing is new', () => {
    expect(rulesOf(toBundle({ manifest: buildManifest('1.2', []) }))).toEqual([]);
  });
});

describe('a OneRoster set with one fault', () => {
  test.each(MUTATIONS)('breaks “$rule” by $by, and nothing else', ({ rule, onRows, onFiles }) => {
    const set = buildMarksSet();
    onRows?.(set);
    const bundle = onFiles?.(toBundle(set)) ?? toBundle(set);
    expect(rulesOf(bundle)).toEqual([rule]);
  });

  test('of every rule there is', () => {
    const broken = new Set([...MUTATIONS.map(({ rule }) => rule), 'date-time']);
    expect([...BUNDLE_RULES].filter((rule) => !broken.has(rule))).toEqual([]);
  });

  test('breaks “date-time” in a set of changes by a local time', () => {
    const set = buildDeltaSet();
    edit(set, ['orgs', 1, 'dateLastModified'], '2012-04-23T18:25:43.511+02:00');
    expect(rulesOf(toBundle(set))).toEqual(['date-time']);
  });

  test('and without a known version says so, and does not guess at the tables', () => {
    const set = buildMarksSet();
    edit(set, ['manifest', 2, 'value'], '1.2.1');
    const found = checkBundle(toBundle(set));
    expect(found.version).toBeNull();
    expect(found.faults.map(({ rule, column }) => [rule, column])).toEqual([
      ['manifest-value', 'oneroster.version'],
    ]);
  });
});

describe('version 1.1', () => {
  test('is held to the same rules, but for what is broken in tables and columns that it does not have', () => {
    const untold = MUTATIONS.filter(({ rule, onRows, onFiles }) => {
      const set = buildMarksSet('1.1');
      try {
        onRows?.(set);
      } catch {
        return true;
      }
      return String(rulesOf(onFiles?.(toBundle(set)) ?? toBundle(set))) !== rule;
    });
    expect(untold.map(({ by }) => by)).toEqual([
      'a file said to be absent',
      'a quote left open',
      'heads alone',
      'a space in an id',
      '256 letters',
      'half a per cent',
      'no braces',
      'no roles',
    ]);
  });

  test('asks for a range and a score', () => {
    const shapes = TABLES['1.1'];
    const required = (table: string) =>
      (shapes[table] ?? []).filter(({ isRequired }) => isRequired).map(({ name }) => name);
    expect(required('lineItems')).toEqual(expect.arrayContaining(['resultValueMin', 'resultValueMax']));
    expect(required('results')).toContain('score');
  });

  test('has 13 tables, and 1.2 eight more', () => {
    expect(Object.keys(TABLES['1.1'])).toHaveLength(13);
    expect(Object.keys(TABLES['1.2'])).toHaveLength(21);
  });
});
