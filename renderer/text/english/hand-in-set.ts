import type { BundleRule } from '../../../src-core/gradebook/oneroster/bundle-slip.ts';
import { count } from './amounts.ts';

/** What each rule of a OneRoster set asks for, as a check that can be ticked. */
export const RULE_CHECKS: Readonly<Record<BundleRule, string>> = {
  'zip-name': 'The archive’s name ends in .zip',
  'zip-method': 'Its files are packed in a way that every reader knows',
  'at-root': 'Every file lies at the root',
  'file-known': 'There are only files that the version knows',
  'manifest-there': 'The manifest is there',
  'manifest-heads': 'The manifest has its two columns',
  'manifest-once': 'The manifest names each property once',
  'manifest-whole': 'The manifest names every property it must',
  'manifest-known': 'The manifest names no property that the version does not know',
  'manifest-value': 'The manifest’s values are those of the standard',
  'manifest-true': 'The manifest tells the truth about which files are there',
  utf8: 'Every file is UTF-8',
  'no-carriage-return': 'No carriage return stands within a field',
  quotes: 'Quotes stand around whole fields',
  'heads-once': 'No column stands twice',
  'heads-order': 'Columns stand in the table’s order',
  'has-rows': 'No file is without rows',
  'field-count': 'Every row has a field for each column',
  required: 'Every required value is there',
  'bulk-blank': 'Status and date of change are left empty, as in a whole set',
  'delta-filled': 'Status and date of change are filled in a set of changes',
  guid: 'Ids have no sign that is not allowed',
  boolean: 'Yes and no are written as true and false',
  date: 'Dates are written as the standard has them',
  'date-time': 'Instants are written as the standard has them',
  year: 'Years have four digits',
  integer: 'Whole numbers are whole',
  float: 'Numbers are numbers',
  'known-word': 'Words are those that the tables know',
  'score-scale': 'Scales are written as the standard has them',
  'id-once': 'No id stands twice',
  link: 'Every row that is pointed to is there',
  'results-need': 'The results come with all that they cannot stand without',
  'end-after-start': 'Terms end after they begin',
  'school-year': 'School years are called by the year in which they end',
  'primary-teacher': 'Only a teacher is a class’s primary one',
  'score-range': 'Every score lies within its range',
};

/** All that is said around a OneRoster set. */
export const SET = {
  files: (files: number) => count(files, 'file'),
  noFiles: 'no set yet',
  notes: 'What to know of this set',
  rules: (kept: number, all: number, version: string) =>
    kept === all
      ? `All ${all} rules of OneRoster ${version} are kept`
      : `${count(all - kept, 'rule')} of ${all} of OneRoster ${version} ${all - kept === 1 ? 'is' : 'are'} broken`,
  kept: ': kept',
  broken: ': broken',
  fileList: 'Files of the set, with their rows',
  asWritten: (file: string) => `${file} as it stands in the archive`,
  school: 'Built on your school’s set',
  schoolIs: (name: string, version: string | null) =>
    version === null ? `${name}, of no version that is known` : `${name}, OneRoster ${version}`,
  schoolWhy:
    'Choose the OneRoster set that your class lists are taken from. From it come the class, its pupils and their ids; nothing in it is changed.',
  schoolSlips: (slips: number) =>
    `${count(slips, 'slip')} in the school’s own set; ${slips === 1 ? 'it holds' : 'they hold'} nothing up.`,
  archive: 'The school’s set as a zip archive',
  folder: 'From a folder…',
  classIs: 'Class',
  classOf: (title: string, pupils: number) => `${title}, ${count(pupils, 'pupil')}`,
  chooseClass: 'Which class?',
  categoryIs: 'Category',
  ownCategory: 'Station circuits',
} as const;
