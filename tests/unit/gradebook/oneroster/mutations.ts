import type { BundleRule } from '../../../../src-core/gradebook/oneroster/bundle-fault.ts';
import type { Bundle } from '../../../../src-core/gradebook/oneroster/check-bundle.ts';
import { buildManifest, type RawSet } from './school.ts';

/** Changes one field of the n-th record (0: the heads). */
export function edit(
  set: RawSet,
  place: readonly [table: string, record: number, head: string],
  value: string,
) {
  const [table, record, head] = place;
  const rows = set[table] ?? [];
  const row = rows[record];
  const at = rows[0]?.indexOf(head) ?? -1;
  if (!row || at < 0) throw new Error(`no ${head} in ${table}`);
  row[at] = value;
}

/** Adds an empty column, at the right unless told where. */
export function addColumn(set: RawSet, table: string, head: string, at = set[table]?.[0]?.length ?? 0) {
  for (const [index, row] of (set[table] ?? []).entries()) row.splice(at, 0, index === 0 ? head : '');
}

/** Changes the text of one file. */
export const editText =
  (file: string, change: (text: string) => string) =>
  (bundle: Bundle): Bundle => ({
    ...bundle,
    files: bundle.files.map((one) => (one.path === file ? { ...one, text: change(one.text) } : one)),
  });

const field =
  (...place: [table: string, record: number, head: string, value: string]) =>
  (set: RawSet) =>
    edit(set, [place[0], place[1], place[2]], place[3]);

/** Calls one table a set of changes. */
export const setDelta = (set: RawSet) => {
  for (const row of set.manifest ?? []) if (row[0] === 'file.orgs') row[1] = 'delta';
};

/** One fault put into a sound set, and the one rule that it breaks. */
export interface Mutation {
  readonly rule: BundleRule;
  readonly by: string;
  readonly onRows?: (set: RawSet) => void;
  readonly onFiles?: (bundle: Bundle) => Bundle;
}

/** At least one fault for each rule. */
export const MUTATIONS: readonly Mutation[] = [
  { rule: 'zip-name', by: 'another ending', onFiles: (bundle) => ({ ...bundle, name: 'school.ZIP' }) },
  {
    rule: 'zip-method',
    by: 'another way of packing',
    onFiles: (bundle) => ({
      ...bundle,
      files: bundle.files.map((one, at) => (at === 1 ? { ...one, packing: 'other' as const } : one)),
    }),
  },
  {
    rule: 'at-root',
    by: 'a nested folder',
    onFiles: (bundle) => ({
      ...bundle,
      files: [...bundle.files, { path: 'more/notes.csv', text: 'a\r\nb\r\n', packing: 'stored' }],
    }),
  },
  {
    rule: 'file-known',
    by: 'a file of its own',
    onFiles: (bundle) => ({
      ...bundle,
      files: [...bundle.files, { path: 'notes.csv', text: 'a\r\nb\r\n', packing: 'stored' }],
    }),
  },
  {
    rule: 'manifest-there',
    by: 'no manifest',
    onFiles: (bundle) => ({
      ...bundle,
      files: bundle.files.filter(({ path }) => path !== 'manifest.csv'),
    }),
  },
  { rule: 'manifest-heads', by: 'wrong case', onRows: field('manifest', 0, 'value', 'Value') },
  {
    rule: 'manifest-once',
    by: 'a repeated line',
    onRows: (set) => set.manifest?.push(['file.orgs', 'bulk']),
  },
  {
    rule: 'manifest-whole',
    by: 'a line left out',
    onRows: (set) => {
      set.manifest = (set.manifest ?? []).filter(([name]) => name !== 'file.demographics');
    },
  },
  {
    rule: 'manifest-known',
    by: 'an unknown line',
    onRows: (set) => set.manifest?.push(['file.teams', 'bulk']),
  },
  {
    rule: 'manifest-value',
    by: 'a word in capitals',
    onRows: (set) => {
      for (const row of set.manifest ?? []) if (row[0] === 'file.demographics') row[1] = 'Absent';
    },
  },
  {
    rule: 'manifest-true',
    by: 'a file said to be absent',
    onRows: (set) => {
      for (const row of set.manifest ?? []) if (row[0] === 'file.scoreScales') row[1] = 'absent';
    },
  },
  { rule: 'utf8', by: 'a letter of another code', onRows: field('orgs', 1, 'name', 'Caf\uFFFD Quay') },
  {
    rule: 'no-carriage-return',
    by: 'a return in a comment',
    onRows: field('results', 1, 'comment', 'first\rsecond'),
  },
  {
    rule: 'quotes',
    by: 'a quote left open',
    onFiles: editText('scoreScales.csv', (text) => text.replace('Letters', '"Letters')),
  },
  {
    rule: 'heads-once',
    by: 'a head twice',
    onRows: (set) => addColumn(set, 'categories', 'title'),
  },
  {
    rule: 'heads-order',
    by: 'two columns swapped',
    onRows: (set) => {
      set.orgs = (set.orgs ?? []).map(([a = '', b = '', c = '', name = '', type = '', ...rest]) => [
        ...[a, b, c],
        type,
        name,
        ...rest,
      ]);
    },
  },
  { rule: 'heads-order', by: 'a head in other case', onRows: field('orgs', 0, 'identifier', 'Identifier') },
  {
    rule: 'has-rows',
    by: 'heads alone',
    onRows: (set) => {
      set.scoreScales = (set.scoreScales ?? []).slice(0, 1);
    },
  },
  { rule: 'field-count', by: 'a field too many', onRows: (set) => set.categories?.[1]?.push('more') },
  { rule: 'required', by: 'no title', onRows: field('classes', 1, 'title', '') },
  { rule: 'bulk-blank', by: 'a status', onRows: field('users', 1, 'status', 'active') },
  {
    rule: 'bulk-blank',
    by: 'a date of change',
    onRows: field('users', 1, 'dateLastModified', '2025-05-15T12:00:00.000Z'),
  },
  { rule: 'delta-filled', by: 'a set of changes without status', onRows: setDelta },
  { rule: 'guid', by: 'a space in an id', onRows: field('scoreScales', 1, 'sourcedId', 'scale 1') },
  { rule: 'guid', by: '256 letters', onRows: field('scoreScales', 1, 'sourcedId', 'a'.repeat(256)) },
  { rule: 'boolean', by: 'False', onRows: field('users', 1, 'enabledUser', 'False') },
  { rule: 'date', by: 'the 31st of June', onRows: field('results', 1, 'scoreDate', '2025-06-31') },
  { rule: 'date', by: 'another order', onRows: field('results', 1, 'scoreDate', '15/05/2025') },
  { rule: 'year', by: 'two years', onRows: field('academicSessions', 2, 'schoolYear', '2024-25') },
  { rule: 'integer', by: 'half a per cent', onRows: field('categories', 1, 'weight', '12.5') },
  { rule: 'float', by: 'a comma', onRows: field('results', 1, 'score', '2,5') },
  { rule: 'known-word', by: 'no space', onRows: field('results', 1, 'scoreStatus', 'fullyGraded') },
  { rule: 'score-scale', by: 'no braces', onRows: field('scoreScales', 1, 'scoreScaleValue', 'Pass:50') },
  { rule: 'id-once', by: 'an id twice', onRows: field('enrollments', 2, 'sourcedId', 'e1') },
  { rule: 'link', by: 'a class that is not there', onRows: field('lineItems', 1, 'classSourcedId', 'none') },
  { rule: 'link', by: 'one of two terms', onRows: field('classes', 1, 'termSourcedIds', 'term-3,term-4') },
  {
    rule: 'results-need',
    by: 'no roles',
    onRows: (set) => {
      delete set.roles;
      set.manifest = buildManifest('1.2', Object.keys(set));
    },
  },
  {
    rule: 'end-after-start',
    by: 'an end on the first day',
    onRows: field('academicSessions', 3, 'endDate', '2025-05-01'),
  },
  {
    rule: 'school-year',
    by: 'the year of its start',
    onRows: field('academicSessions', 1, 'schoolYear', '2024'),
  },
  { rule: 'primary-teacher', by: 'a primary pupil', onRows: field('enrollments', 2, 'primary', 'true') },
  { rule: 'score-range', by: '0 of 1 to 4', onRows: field('results', 1, 'score', '0') },
  { rule: 'score-range', by: '5 of 1 to 4', onRows: field('results', 1, 'score', '5') },
];
