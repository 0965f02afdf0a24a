/** The menu bar of the desktop shell; what the system names by itself is not here. */
export const MENU = {
  program: 'Routemark',
  lesson: 'Lesson',
  open: 'Open…',
  bringIn: 'Bring in clips…',
  handIn: 'Hand in',
  newWindow: 'New window',
  edit: 'Edit',
  undo: 'Undo',
  redo: 'Redo',
  nextFlag: 'Next flag',
  view: 'View',
  window: 'Window',
  help: 'Help',
  keys: 'Keys',
} as const;

/** The system's dialogs for choosing a folder, by what it is chosen for. */
export const FOLDER_DIALOGS = {
  lesson: { title: 'Open a lesson', buttonLabel: 'Open' },
  clips: { title: 'Bring in clips', buttonLabel: 'Bring in' },
  'hand-in': { title: 'Write the sheet to', buttonLabel: 'Choose' },
  place: { title: 'Put the lesson into', buttonLabel: 'Choose' },
  'class-list': { title: 'The folder that holds the class list', buttonLabel: 'Choose' },
  'school-set': { title: 'The folder that holds the school’s OneRoster set', buttonLabel: 'Choose' },
  tablet: { title: 'The tablet’s folder', buttonLabel: 'Compare' },
} as const;

/** What the shell asks where a window failed, and says where nothing can be shown. */
export const SHELL = {
  failing: 'This window keeps failing.',
  hanging: 'This window does not answer.',
  safe: 'Everything decided before is safe.',
  loadAgain: 'Load the window again',
  closeWindow: 'Close the window',
  wait: 'Wait',
  notStarted: 'Routemark could not start',
  notBuilt: 'The window was not built.',
} as const;
