import type { BundleRule } from '../../../src-core/gradebook/oneroster/bundle-fault.ts';

/** What is said of one rule of a OneRoster set. */
interface RuleWords {
  /** As a check that can be ticked. */
  readonly asks: string;
  /** As the second half of a sentence about what is wrong. */
  readonly broken: string;
}

/** Every rule that a OneRoster set is held to, in words. */
export const BUNDLE_RULE_WORDS: Readonly<Record<BundleRule, RuleWords>> = {
  'zip-name': {
    asks: 'The archive’s name ends in .zip',
    broken: 'the archive’s name must end in .zip, in small letters',
  },
  'zip-method': {
    asks: 'Its files are packed in a way that every reader knows',
    broken: 'it must be stored or deflated, nothing else',
  },
  'at-root': { asks: 'Every file lies at the root', broken: 'every file must lie at the root of the set' },
  'file-known': {
    asks: 'There are only files that the version knows',
    broken: 'the version knows no file of this name; letter case counts',
  },
  'manifest-there': { asks: 'The manifest is there', broken: 'manifest.csv is missing' },
  'manifest-heads': {
    asks: 'The manifest has its two columns',
    broken: 'the heads must be propertyName,value',
  },
  'manifest-once': {
    asks: 'The manifest names each property once',
    broken: 'each property may be named once',
  },
  'manifest-whole': {
    asks: 'The manifest names every property it must',
    broken: 'this property must be named',
  },
  'manifest-known': {
    asks: 'The manifest names no property that the version does not know',
    broken: 'the version knows no property of this name',
  },
  'manifest-value': {
    asks: 'The manifest’s values are those of the standard',
    broken: 'a file is absent, bulk or delta; the manifest’s own version is 1.0, OneRoster’s 1.1 or 1.2',
  },
  'manifest-true': {
    asks: 'The manifest tells the truth about which files are there',
    broken: 'the manifest does not tell the truth about whether this file is there',
  },
  utf8: { asks: 'Every file is UTF-8', broken: 'it must be UTF-8' },
  'no-carriage-return': {
    asks: 'No carriage return stands within a field',
    broken: 'no carriage return may stand within a field or alone',
  },
  quotes: {
    asks: 'Quotes stand around whole fields',
    broken: 'quotes must stand around a whole field, and be doubled within',
  },
  'heads-once': { asks: 'No column stands twice', broken: 'no head may stand twice' },
  'heads-order': {
    asks: 'Columns stand in the table’s order',
    broken: 'the heads must stand in the table’s order and letter case, others only at the right',
  },
  'has-rows': { asks: 'No file is without rows', broken: 'a file without rows must be left out' },
  'field-count': {
    asks: 'Every row has a field for each column',
    broken: 'there must be as many fields as heads',
  },
  required: { asks: 'Every required value is there', broken: 'a value is required' },
  'bulk-blank': {
    asks: 'Status and date of change are left empty, as in a whole set',
    broken: 'in a set with all rows this stays empty',
  },
  'delta-filled': {
    asks: 'Status and date of change are filled in a set of changes',
    broken: 'in a set of changes this is filled; a status is active or tobedeleted',
  },
  guid: {
    asks: 'Ids have no sign that is not allowed',
    broken: 'an id has at most 255 letters, digits and . - _ / @',
  },
  boolean: {
    asks: 'Yes and no are written as true and false',
    broken: 'it must be true or false, in small letters',
  },
  date: { asks: 'Dates are written as the standard has them', broken: 'a date looks like 2002-04-23' },
  'date-time': {
    asks: 'Instants are written as the standard has them',
    broken: 'an instant looks like 2012-04-23T18:25:43.511Z',
  },
  year: { asks: 'Years have four digits', broken: 'a year has four digits' },
  integer: { asks: 'Whole numbers are whole', broken: 'it must be a whole number' },
  float: { asks: 'Numbers are numbers', broken: 'it must be a number with a point' },
  'known-word': {
    asks: 'Words are those that the tables know',
    broken: 'it must be one of the table’s words, or begin with ext:',
  },
  'score-scale': {
    asks: 'Scales are written as the standard has them',
    broken: 'a scale looks like {A:94},{B:85}',
  },
  'id-once': { asks: 'No id stands twice', broken: 'no id may stand twice' },
  link: { asks: 'Every row that is pointed to is there', broken: 'the set has no row with this id' },
  'results-need': {
    asks: 'The results come with all that they cannot stand without',
    broken: 'results cannot stand without this file',
  },
  'end-after-start': {
    asks: 'Terms end after they begin',
    broken: 'the end is the first day after, so it must be later than the start',
  },
  'school-year': {
    asks: 'School years are called by the year in which they end',
    broken: 'a school year is called by the year in which it ends',
  },
  'primary-teacher': {
    asks: 'Only a teacher is a class’s primary one',
    broken: 'only a teacher can be the primary one of a class',
  },
  'score-range': {
    asks: 'Every score lies within its range',
    broken: 'the score lies outside its line item’s range',
  },
};
