import type { SheetField } from '../../../src-core/lesson/plan.ts';
import { count } from './amounts.ts';

/** What a column of the sheet holds, as the teacher calls it. */
export const FIELD_NAMES: Readonly<Record<SheetField, string>> = {
  pupil: 'Roster id',
  name: 'Name',
  given: 'Given name',
  family: 'Family name',
  squad: 'Squad',
  points: 'Points',
  max: 'Of',
  percent: '%',
  scale: 'Scale',
  state: 'State',
  comment: 'Comment',
};

/** All that Hand in says: what to write, the proof of it, the counts before. */
export const HAND_IN = {
  sentence: 'Look it through before it is written. Nothing is sent anywhere.',
  handedIn: (times: number, last: string) =>
    `Handed in ${times === 1 ? 'once' : `${times} times`}, last ${last}.`,
  what: 'Write',
  kinds: {
    csv: { name: 'Gradebook CSV', what: 'One row a pupil, for any gradebook that reads a table.' },
    xlsx: {
      name: 'Spreadsheet',
      what: 'A workbook (.xlsx): the same rows, and a second sheet that says where each point came from.',
    },
    oneroster: {
      name: 'OneRoster set',
      what: 'An archive (.zip) for gradebooks that read the standard, held to its rules by name.',
    },
    'grade-sheet': {
      name: 'Grade sheet on paper',
      what: 'A PDF with each squad’s walk, answers, points and one still a rep, to be signed.',
    },
    'squad-slips': {
      name: 'Slips for squads',
      what: 'A PDF, a page a squad: what went well and what to do next, in plain words.',
    },
    'pupil-slips': {
      name: 'Slips for pupils',
      what: 'The same for each pupil, several a page, to be cut apart.',
    },
  },
  columnsAs: (mapping: string | null) =>
    mapping === null ? 'Columns as the plan has them.' : `Columns as last time for “${mapping}”.`,
  version: 'Version of OneRoster',
  versions: { '1.2': '1.2', '1.1': '1.1' },
  into: 'Into',
  lessonFolder: 'the lesson folder',
  ownFolder: (lesson: string) => `…/${lesson}/hand-in`,
  asLastTime: (name: string) => `As last time: ${name}`,
  change: 'Another folder…',
  back: 'The lesson folder again',
  fileName: 'File name',
  preview: 'Preview',
  table: 'The rows as they will be written',
  whichSheet: 'Which sheet of the workbook',
  accountTable: 'Where each point came from',
  rows: (rows: number) => count(rows, 'row'),
  columns: 'Columns…',
  raw: 'As it stands in the file',
  rawMore: (lines: number) => `and ${count(lines, 'more line')}`,
  nothing: '–',
  counted: 'Before you write',
  slots: (slots: number) => count(slots, 'slot'),
  inked: 'inked',
  pencilled: 'pencilled',
  flagged: 'under a flag',
  noClip: 'no clip',
  tally: (inked: number, pencilled: number, flagged: number, none: number) =>
    `${inked} inked, ${pencilled} pencilled, ${flagged} under a flag, ${none} without a clip`,
  flagsOpen: (flags: number) => `${count(flags, 'flag')} open`,
  settle: 'Settle',
  wait: (clips: number) =>
    `${count(clips, 'clip')} ${clips === 1 ? 'waits' : 'wait'} for your ink. Until then ${clips === 1 ? 'it is' : 'they are'} written as unconfirmed.`,
  review: 'Review',
  pointsMissing: (amount: number) =>
    `${amount === 1 ? 'One mark of a squad is' : `${amount} marks of squads are`} not given yet and ${amount === 1 ? 'counts' : 'count'} as 0.`,
  scores: 'Scores',
  away: (absent: number, excused: number) => {
    const parts = [
      ...(absent > 0 ? [`${count(absent, 'pupil')} absent`] : []),
      ...(excused > 0 ? [`${absent > 0 ? excused : count(excused, 'pupil')} excused`] : []),
    ];
    return `${parts.join(', ')}. They get no number.`;
  },
  allInked: 'Everything is inked and settled. The marks are final.',
  notFinal: (flags: number) =>
    `Write while flags are open. Every row will say “not final: ${count(flags, 'flag')} open”.`,
  notFinalPaper: (flags: number) =>
    `Print while ${count(flags, 'flag')} ${flags === 1 ? 'is' : 'are'} open. Every page will say “Not final”.`,
  write: (fileName: string) => `Write ${fileName}`,
  writing: 'Writing…',
  written: (path: string) => `Written: ${path}`,
  toKnow: 'What to know of it',
  replace: 'Replace it',
  failed: 'Nothing was written',
  asking: 'Laying out the sheet…',
  noSheet: 'There is nothing to hand in yet',
  noSheetText: 'The sheet is laid out as soon as the clips are read.',
  toBringIn: 'Go to Bring in',

  columnsTitle: 'Columns for a destination',
  columnsSentence: 'What the other program calls each column, in its order.',
  head: 'Its heading',
  field: 'What stands in it',
  columnLabel: (at: number) => `Column ${at + 1}`,
  up: (head: string) => `Move up: ${head}`,
  upShort: 'Move up',
  remove: (head: string) => `Leave out: ${head}`,
  removeShort: 'Leave out',
  add: 'Add a column',
  remember: 'Remember these for',
  rememberHint: 'such as “Autumn book”',
  use: 'Use these columns',
  known: 'Remembered',
  asPlan: 'As the plan has them',
  forget: (name: string) => `Forget ${name}`,
  forgetShort: 'Forget',
} as const;
