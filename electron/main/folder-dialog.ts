/** What a folder is chosen for. */
export type FolderPurpose = 'lesson' | 'clips' | 'hand-in' | 'place' | 'class-list' | 'school-set' | 'tablet';

/** What the system's dialog is told; Electron's OpenDialogOptions takes it. */
export interface FolderDialog {
  readonly title: string;
  readonly buttonLabel: string;
  readonly properties: ('openDirectory' | 'multiSelections' | 'createDirectory')[];
}

const DIALOGS: Readonly<Record<FolderPurpose, FolderDialog>> = {
  lesson: { title: 'Open a lesson', buttonLabel: 'Open', properties: ['openDirectory'] },
  clips: {
    title: 'Bring in clips',
    buttonLabel: 'Bring in',
    properties: ['openDirectory', 'multiSelections'],
  },
  'hand-in': {
    title: 'Write the sheet to',
    buttonLabel: 'Choose',
    properties: ['openDirectory', 'createDirectory'],
  },
  place: {
    title: 'Put the lesson into',
    buttonLabel: 'Choose',
    properties: ['openDirectory', 'createDirectory'],
  },
  'class-list': {
    title: 'The folder that holds the class list',
    buttonLabel: 'Choose',
    properties: ['openDirectory'],
  },
  'school-set': {
    title: 'The folder that holds the school’s OneRoster set',
    buttonLabel: 'Choose',
    properties: ['openDirectory'],
  },
  tablet: { title: 'The tablet’s folder', buttonLabel: 'Compare', properties: ['openDirectory'] },
};

/** The dialog for a purpose. */
export function getFolderDialog(purpose: FolderPurpose): FolderDialog {
  return DIALOGS[purpose];
}
