import type { Problem } from '../../../src-core/contract/problem.ts';
import type { CsvProblem } from '../../../src-core/gradebook/csv.ts';
import type { HandInProblem } from '../../../src-core/gradebook/hand-in-check.ts';
import type { JournalProblem } from '../../../src-core/lesson-file/journal-file.ts';
import type { OverwrittenProblem, StorageProblem } from '../../../src-core/platform/storage-problem.ts';
import { count, size } from './amounts.ts';
import { describeExpected } from './plan-fields.ts';
import type { Wordings } from './wordings.ts';

const NOTHING_LOST = 'Everything recorded before is safe.';

const journalProblems: Wordings<JournalProblem['code']> = {
  'journal-not-ours': () => ({
    what: 'marks.jsonl is not a Routemark journal.',
    todo: 'Move it out of the lesson folder. Nothing was changed.',
  }),
  'journal-newer': ({ version, newest }) => ({
    what: `marks.jsonl was written by a newer Routemark (format ${version}; this one reads up to ${newest}).`,
    todo: 'Install the newer version. Nothing was changed.',
  }),
  'journal-header-missing': () => ({
    what: 'marks.jsonl lacks its first line; it was read all the same.',
    todo: null,
  }),
  'journal-line-torn': ({ line }) => ({
    what: `marks.jsonl, line ${line} was cut off while it was written and is left out.`,
    todo: `Make that decision again if it is missing. ${NOTHING_LOST}`,
  }),
  'journal-line-not-json': ({ line, column }) => ({
    what: `marks.jsonl, line ${line} is damaged at column ${column} and is left out.`,
    todo: 'Look at the marks of that lesson once more.',
  }),
  'journal-line-invalid': ({ line, path, expected }) => ({
    what: `marks.jsonl, line ${line} is left out: ${path} should hold ${describeExpected(expected, null)}.`,
    todo: 'Look at the marks of that lesson once more.',
  }),
  'journal-kind-unknown': ({ line, kind }) => ({
    what: `marks.jsonl, line ${line} holds a decision (${kind}) that this Routemark does not know.`,
    todo: 'Install the newer version to have it counted.',
  }),
  'journal-id-repeated': ({ line, firstLine, differs }) => ({
    what: `marks.jsonl, line ${line} repeats line ${firstLine} and is left out.`,
    todo: differs ? 'The two differ: look at the marks of that lesson once more.' : null,
  }),
};

const storageProblems: Wordings<(StorageProblem | OverwrittenProblem)['code']> = {
  'disk-full': ({ path }) => ({
    what: `The disk is full; ${path} was not written.`,
    todo: `Make room and try again. ${NOTHING_LOST}`,
  }),
  'not-writable': ({ path }) => ({
    what: `${path} may not be written.`,
    todo: `Close it in other programs, or ask for the right to write there. ${NOTHING_LOST}`,
  }),
  'not-readable': ({ path }) => ({
    what: `${path} may not be opened.`,
    todo: 'Ask for the right to read it, or close it in other programs.',
  }),
  'folder-missing': ({ path }) => ({
    what: `The folder of ${path} is not there.`,
    todo: `Plug the stick or the network drive in again, or choose another place. ${NOTHING_LOST}`,
  }),
  'is-a-folder': ({ path }) => ({ what: `${path} is a folder.`, todo: 'Choose a file’s name.' }),
  'name-too-long': ({ path }) => ({ what: `${path} is too long a name.`, todo: 'Choose a shorter one.' }),
  'copy-differs': ({ path }) => ({
    what: `The copy ${path} was not the same as its original and was taken away.`,
    todo: 'Try again; if it happens again, look at the disk or the cable.',
  }),
  'write-failed': ({ path, cause }) => ({
    what: `${path} could not be written or read (${cause}).`,
    todo: `Try again. ${NOTHING_LOST}`,
  }),
  'journal-overwritten': ({ path }) => ({
    what: `Another program is writing over ${path}; the last decision was not kept.`,
    todo: `Stop the synchronising program for this folder and decide again. ${NOTHING_LOST}`,
  }),
};

const sheetProblems: Wordings<Exclude<(HandInProblem | CsvProblem)['code'], 'films-deleted'>> = {
  'hand-in-flags-open': ({ openFlags }) => ({
    what: `${count(openFlags, 'flag')} still open, so no sheet was written.`,
    todo: 'Settle the flags, or tick that it is to be written all the same: every row will say that it is not final.',
  }),
  'hand-in-no-pupils': () => ({
    what: 'There is no pupil to write a mark for, so no sheet was written.',
    todo: 'Look whether roster.csv is there and can be read.',
  }),
  'sheet-id-formula': ({ row, id }) => ({
    what: `Row ${row}: a spreadsheet would take the id “${id}” for a formula. Ids are never changed.`,
    todo: 'Import the sheet into the gradebook without opening it in a spreadsheet.',
  }),
};

type Rest =
  | 'disk-too-small'
  | 'lesson-without-plan'
  | 'lesson-without-roster'
  | 'decision-invalid'
  | 'nothing-to-undo'
  | 'nothing-to-redo';

const otherProblems: Wordings<Extract<Problem['code'], Rest>> = {
  'disk-too-small': ({ neededBytes, freeBytes }) => ({
    what: `The clips need ${size(neededBytes)}, and the disk has ${size(freeBytes)} left. Nothing was copied, and nothing on the tablet was touched.`,
    todo: 'Make room, or read the clips in place, where they lie.',
  }),
  'lesson-without-plan': () => ({
    what: 'There is no plan.json in this folder.',
    todo: 'Choose the lesson folder: it holds plan.json, roster.csv and clips.',
  }),
  'lesson-without-roster': () => ({
    what: 'There is no roster.csv, so there are no pupils to mark.',
    todo: 'Put roster.csv beside plan.json, with the columns id,given,family,squad.',
  }),
  'decision-invalid': ({ path, expected, detail }) => ({
    what: `Not recorded: “${path.replace(/^what\./, '')}” should hold ${describeExpected(expected, detail)}.`,
    todo: 'Correct it and decide again.',
  }),
  'nothing-to-undo': () => ({ what: 'There is nothing to undo.', todo: null }),
  'nothing-to-redo': () => ({ what: 'There is nothing to redo.', todo: null }),
};

/** Words for what happens when decisions are kept and sheets are written. */
export const recordProblems = {
  ...journalProblems,
  ...storageProblems,
  ...sheetProblems,
  ...otherProblems,
};
