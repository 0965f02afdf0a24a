import type { DeletionEntry } from '../../../src-core/lesson-file/deletion-log.ts';
import type { LessonPart } from '../../../src-core/lesson-file/lesson-parts.ts';
import { count, size } from './amounts.ts';

/** Parts that go, by their names; of what is read in clips, what it is. */
type PartNames = Readonly<
  Record<Exclude<LessonPart, 'deletions.jsonl'> | 'evidence/stills' | 'evidence/proxies', string>
>;

/** All that is said on the sheets that look after what is kept of a lesson. */
export const LOOK_AFTER = {
  pages: 'Pages of Hand in',
  marksPage: 'Marks',
  page: 'Look after',
  sentence: 'What is kept of this lesson, on whom, and until when. Nothing is deleted by itself.',
  asking: 'Looking…',

  keep: 'Kept until',
  noDate: 'No last day is set.',
  until: (day: string) => `This lesson is kept until ${day}, that day included.`,
  overdue: (day: string) => `It was to be kept until ${day}. That day is over.`,
  unreadable: 'keeping.json cannot be read, so no day holds. Set it again.',
  lastDay: 'Last day',
  setDay: 'Set this day',
  noDay: 'No last day',
  usual: (className: string, day: string) => `As for ${className} before: ${day}`,
  policy:
    'Your school’s rule goes first: the end of the term and the time for appeals, say. This is no legal advice.',
  due: 'Other lessons that are due',
  dueLesson: (title: string, className: string, date: string, until: string) =>
    `${title}, ${className}, ${date}: kept until ${until}`,
  log: 'Deleted so far',
  noDeletions: 'Nothing yet. The log says when, who and how much, and nothing of what was in it.',
  deletion: (at: string, { who, what, files, bytes, isBegun }: DeletionEntry) =>
    `${at}, ${who}: ${what === 'films' ? 'clips and stills' : 'everything'}, ${count(files, 'file')}, ${size(bytes)}${isBegun ? '; cut off, so some may still be there' : ''}`,

  tablet: 'Tablets',
  tabletWhy: 'Compares a tablet with this lesson, every byte of it, and lists what may be deleted there.',
  compare: 'Choose a tablet’s folder…',
  stop: 'Stop',
  comparing: (done: number, total: number) =>
    total === 0 ? 'Looking through the tablet…' : `Comparing, ${done} of ${count(total, 'file')}`,
  mayGo: 'Verified here, may be deleted there',
  mustStay: 'Not here, must stay there',

  backUp: 'Back up',
  backUpNow: 'Back up this lesson…',

  pupils: 'Pupils',
  pupilCounts: (pupils: number, unnoted: number, hidden: number) =>
    [
      count(pupils, 'pupil'),
      ...(unnoted > 0 ? [`consent of ${unnoted} not noted`] : []),
      ...(hidden > 0 ? [`${hidden} shown in no still`] : []),
    ].join(', '),
  noReasons:
    'Only the word is noted, never a reason. Consent, opt-out and who may see a film: your school’s policy and local law go first.',
  pupilHeads: ['Pupil', 'Squad', 'Consent to filming', 'Stills', 'Held'],
  consentOf: (name: string) => `Consent of ${name}`,
  consents: { none: 'not noted', given: 'given', withheld: 'withheld' },
  stillsOf: (name: string) => `Stills of ${name}`,
  stills: { yes: 'may be shown', no: 'not shown' },
  record: 'Record',
  recordLabel: (name: string) => `Record of ${name}`,
  recordOf: (name: string) => `Everything held on ${name}`,
  recordText: 'The record as it will be written',
  recordInto: (folder: string | null, fileName: string) =>
    `Into ${folder ?? 'the lesson’s own folder “records”'}: ${fileName}`,
  writeRecord: 'Write the record',
  replace: 'Replace it',
  otherFolder: 'Another folder…',
  written: (path: string) => `Written: ${path}`,

  letGo: 'Delete',
  what: 'What is deleted',
  scopes: { films: 'Clips and stills', all: 'Everything' },
  scopeWhat: {
    films:
      'Clips, stills, films made for this window, and all that was read in them. Your decisions stay, and so does what was handed in and printed; no marks can be written afterwards.',
    all: 'The above, and marks, roster, plan, what was handed in and what was printed. The log of deletions stays.',
  },
  inPlace: (folder: string) =>
    `The clips are read where they lie, in ${folder}. They are not the lesson’s own and are not deleted from here.`,
  show: 'Show what would go',
  parts: 'What would go, by part',
  partHeads: ['Part', 'Files', 'Size'],
  partNames: {
    clips: 'Clips',
    evidence: 'What was read in them',
    'evidence/stills': 'Stills',
    'evidence/proxies': 'Films for this window',
    'plan.json': 'Plan',
    photos: 'Photos of the stations',
    versions: 'Earlier plans',
    'roster.csv': 'Roster',
    'marks.jsonl': 'Marks',
    'second-marks': 'Second markings',
    'keeping.json': 'Last day',
    'hand-in': 'Handed in',
    records: 'Records of pupils',
    print: 'Printed',
    'summary.json': 'Figures for looking back',
  } as const satisfies PartNames as Readonly<Record<string, string>>,
  size,
  list: 'Every file that would go',
  looked: 'I have looked at this list. It cannot be undone.',
  delete: (files: number, bytes: number) => `Delete ${count(files, 'file')}, ${size(bytes)}`,
  deleting: 'Deleting…',
  leave: 'Keep all of it',
  failed: 'Nothing was deleted',
  notAll: 'Not all of it could be deleted',
  notKept: 'The figures for looking back could not be kept',
} as const;
