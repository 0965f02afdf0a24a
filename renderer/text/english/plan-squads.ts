import { count, list } from './amounts.ts';

/** All that squads and the class list say. */
export const SQUADS = {
  head: 'Squads',
  sentence: (pupils: number, squads: number) => `${count(pupils, 'pupil')} in ${count(squads, 'squad')}`,
  classList: 'Class list…',
  noClass: 'No class yet.',
  noClassText: 'Take over your school’s list: a CSV with any columns, or a OneRoster export.',
  add: 'Squad',
  remove: (squad: string) => `Take squad ${squad} out`,
  removeFull: 'Move its pupils first',
  nameOf: (squad: string) => `Name of ${squad}`,
  tabletOf: (squad: string) => `Tablet of ${squad}`,
  pinnieOf: (squad: string) => `Pinnie of ${squad}`,
  ownPinnie: 'another colour',
  isOwnPinnie: 'own:',
  newPinnie: 'our own',
  pinnieNameOf: (squad: string) => `What ${squad}’s pinnie is called`,
  pinnieColourOf: (squad: string) => `Colour of ${squad}’s pinnie`,
  pupilsOf: (squad: string) => `Pupils of ${squad}`,
  moveKeys: (squads: number) =>
    squads === 1
      ? ''
      : `Choose pupils to move them, or press ${squads > 9 ? '1 to 9' : `1 to ${squads}`} on one.`,
  nobody: 'nobody yet',
  chosen: (pupils: number) => `${count(pupils, 'pupil')} chosen`,
  moveTo: 'move to…',
  moveToLabel: 'Move the chosen pupils to',
  keepApart: 'Keep apart',
  keepTogether: 'Keep together',
  chooseNone: 'Choose none',
  form: ['Form', ', mixed by the number', '. Another number mixes the class differently.'],
  formLabel: 'How many squads to form',
  sizes: (squads: number, pupils: number) => {
    const [least, most] = [Math.floor(pupils / squads), Math.ceil(pupils / squads)];
    return `${count(squads, 'squad')} of ${least === most ? most : `${least} or ${most}`}`;
  },
  seedLabel: 'Number that squads are mixed by',
  formNow: 'Form squads',
  proposed: 'Proposed squads',
  proposedHint: 'In pencil until you ink them; nobody has moved yet.',
  ink: 'Ink these squads',
  again: 'Draw again',
  putAway: 'Leave them as they were',
  notPossible: 'There are no such squads',
  apart: (names: readonly string[]) => `${list(names)} are kept apart.`,
  together: (names: readonly string[]) => `${list(names)} stay together.`,
  forget: (rule: string) => `Forget this rule: ${rule}`,
  attendance: 'Who is absent, excused or late is said on the day, under Scores.',
} as const;

/** Taking a class list over: where it comes from, how its columns are read, what it would change. */
export const ROSTER = {
  head: 'Class list',
  what: 'A CSV file with one line a pupil, or all files of a OneRoster export (or its zip). Nothing is changed until you have seen it.',
  file: 'Choose the file, or files',
  folder: 'Choose a folder…',
  reading: 'Reading the list…',
  column: { id: 'Roster id', given: 'Given name', family: 'Family name' },
  noColumn: 'which column',
  classIs: 'Class',
  whichClass: 'which class',
  classOf: (title: string, pupils: number) => `${title}, ${count(pupils, 'pupil')}`,
  oneRoster: (version: string) => `A OneRoster ${version} export`,
  csv: 'A table with one line a pupil',
  added: (pupils: number) => `${count(pupils, 'pupil')} new in the class`,
  changed: (pupils: number) => `${count(pupils, 'name')} spelt otherwise`,
  left: (pupils: number) => `${count(pupils, 'pupil')} no longer on the list`,
  back: (pupils: number) => `${count(pupils, 'pupil')} on the list again`,
  unchanged: (pupils: number) => `${count(pupils, 'pupil')} as before`,
  leftLabel: 'What becomes of those who left',
  leftChoices: { keep: 'stay in the file, marked as left', remove: 'are taken out of the file' },
  leftWords: ['Those who left', '.'],
  nothingNew: 'The class is the same as before.',
  take: (pupils: number) => (pupils === 0 ? 'Take it over' : `Take over ${count(pupils, 'pupil')}`),
  leave: 'Leave the class as it is',
} as const;
