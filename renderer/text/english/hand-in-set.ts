import { count } from './amounts.ts';

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
  schoolFaults: (faults: number) =>
    `${count(faults, 'rule')} broken in the school’s own set; ${faults === 1 ? 'that holds' : 'they hold'} nothing up.`,
  archive: 'The school’s set as a zip archive',
  folder: 'From a folder…',
  classIs: 'Class',
  classOf: (title: string, pupils: number) => `${title}, ${count(pupils, 'pupil')}`,
  chooseClass: 'Which class?',
  categoryIs: 'Category',
  ownCategory: 'Station circuits',
} as const;
