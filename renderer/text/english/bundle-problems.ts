import type { BundleProblem } from '../../../src-core/gradebook/oneroster/bundle-problem.ts';
import type { BundleRule, BundleSlip } from '../../../src-core/gradebook/oneroster/bundle-slip.ts';
import { list, size } from './amounts.ts';
import type { Wordings } from './wordings.ts';

/** What each rule of a OneRoster set asks for, as the second half of a sentence about what is wrong. */
const RULES: Readonly<Record<BundleRule, string>> = {
  'zip-name': 'the archive’s name must end in .zip, in small letters',
  'zip-method': 'it must be stored or deflated, nothing else',
  'at-root': 'every file must lie at the root of the set',
  'file-known': 'the version knows no file of this name; letter case counts',
  'manifest-there': 'manifest.csv is missing',
  'manifest-heads': 'the heads must be propertyName,value',
  'manifest-once': 'each property may be named once',
  'manifest-whole': 'this property must be named',
  'manifest-known': 'the version knows no property of this name',
  'manifest-value':
    'a file is absent, bulk or delta; the manifest’s own version is 1.0, OneRoster’s 1.1 or 1.2',
  'manifest-true': 'the manifest does not tell the truth about whether this file is there',
  utf8: 'it must be UTF-8',
  'no-carriage-return': 'no carriage return may stand within a field or alone',
  quotes: 'quotes must stand around a whole field, and be doubled within',
  'heads-once': 'no head may stand twice',
  'heads-order': 'the heads must stand in the table’s order and letter case, others only at the right',
  'has-rows': 'a file without rows must be left out',
  'field-count': 'there must be as many fields as heads',
  required: 'a value is required',
  'bulk-blank': 'in a set with all rows this stays empty',
  'delta-filled': 'in a set of changes this is filled; a status is active or tobedeleted',
  guid: 'an id has at most 255 letters, digits and . - _ / @',
  boolean: 'it must be true or false, in small letters',
  date: 'a date looks like 2002-04-23',
  'date-time': 'an instant looks like 2012-04-23T18:25:43.511Z',
  year: 'a year has four digits',
  integer: 'it must be a whole number',
  float: 'it must be a number with a point',
  'known-word': 'it must be one of the table’s words, or begin with ext:',
  'score-scale': 'a scale looks like {A:94},{B:85}',
  'id-once': 'no id may stand twice',
  link: 'the set has no row with this id',
  'results-need': 'results cannot stand without this file',
  'end-after-start': 'the end is the first day after, so it must be later than the start',
  'school-year': 'a school year is called by the year in which it ends',
  'primary-teacher': 'only a teacher can be the primary one of a class',
  'score-range': 'the score lies outside its line item’s range',
};

/** Where a slip is: `users.csv, record 4, username`. */
function nameBundlePlace({ file, record, column }: BundleSlip): string {
  const parts = [file, record === null ? '' : `record ${record}`, column ?? ''];
  return parts.filter((part) => part !== '').join(', ');
}

/** Words for sets of OneRoster files, read and written. */
export const bundleProblems: Wordings<BundleProblem['code']> = {
  'bundle-rule-broken': (slip) => {
    const place = nameBundlePlace(slip);
    const found = slip.found === null || slip.found === '' ? '' : ` (“${slip.found}”)`;
    return {
      what: `${place === '' ? 'The set' : place}${found}: ${RULES[slip.rule]} [${slip.rule}].`,
      todo: 'Mend it where the set was made.',
    };
  },
  'bundle-school-missing': () => ({
    what: 'A OneRoster set needs the school’s own beside it, the one that class lists are taken from.',
    todo: 'Choose its folder or zip archive.',
  }),
  'bundle-unreadable': ({ name }) => ({
    what: `${name} is no set of OneRoster files: neither a folder nor a zip archive that can be read.`,
    todo: 'Choose the zip archive, or the folder that holds manifest.csv.',
  }),
  'bundle-too-large': ({ name, limitBytes }) => ({
    what: `${name} holds more than ${size(limitBytes)}, which is more than is read.`,
    todo: 'Ask for a set of your school or your classes alone.',
  }),
  'bundle-table-missing': ({ file }) => ({
    what: `The school’s set has no ${file}, so the class cannot be told from it.`,
    todo: 'Ask for the whole set from which class lists are taken.',
  }),
  'bundle-class-unknown': ({ classId }) => ({
    what:
      classId === null
        ? 'No class of the school’s set has a pupil of roster.csv.'
        : `The school’s set has no class ${classId} with a pupil of roster.csv.`,
    todo: 'The ids of roster.csv must be those of the school’s set: take the roster from that set.',
  }),
  'bundle-class-open': ({ classIds }) => ({
    what: `The roster’s pupils are in several classes of the school’s set: ${list(classIds)}.`,
    todo: 'Say which one it is.',
  }),
  'bundle-category-unknown': ({ category }) => ({
    what: `The school’s set has no category ${category}.`,
    todo: 'Name one of its categories, or none.',
  }),
  'bundle-row-missing': ({ file, id }) => ({
    what: `The school’s set points to ${id}, which its ${file} does not have.`,
    todo: 'Ask for a whole set.',
  }),
  'bundle-pupil-unknown': ({ pupil }) => ({
    what: `${pupil} is not in the class by the school’s set; no result was written.`,
    todo: 'Enter this mark by hand, or take the roster from a newer set.',
  }),
  'bundle-result-left-out': ({ pupil, status }) => ({
    what: `${pupil} has no score (${status}). OneRoster 1.1 has no result without one, so none was written.`,
    todo: 'Enter it by hand, or write version 1.2 where the gradebook reads it.',
  }),
  'bundle-text-made-safe': ({ file, id, column }) => ({
    what: `${file}, ${id}: ${column} was changed, for a spreadsheet would have run it or a reader stumbled over it.`,
    todo: null,
  }),
};
