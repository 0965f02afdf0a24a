import type { BundleFault } from '../../../src-core/gradebook/oneroster/bundle-fault.ts';
import type { BundleProblem } from '../../../src-core/gradebook/oneroster/bundle-problem.ts';
import { list, size } from './amounts.ts';
import { BUNDLE_RULE_WORDS } from './bundle-rules.ts';
import type { Wordings } from './wordings.ts';

/** Where a fault is: `users.csv, record 4, username`. */
function nameBundlePlace({ file, record, column }: BundleFault): string {
  const parts = [file, record === null ? '' : `record ${record}`, column ?? ''];
  return parts.filter((part) => part !== '').join(', ');
}

/** Words for sets of OneRoster files, read and written. */
export const bundleProblems: Wordings<BundleProblem['code']> = {
  'bundle-rule-broken': (fault) => {
    const place = nameBundlePlace(fault);
    const found = fault.found === null || fault.found === '' ? '' : ` (“${fault.found}”)`;
    return {
      what: `${place === '' ? 'The set' : place}${found}: ${BUNDLE_RULE_WORDS[fault.rule].broken} [${fault.rule}].`,
      todo: 'Mend it where the set was made; of a set made here, in the school’s set or the roster that it is built on.',
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
