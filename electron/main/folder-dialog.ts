import { FOLDER_DIALOGS } from '../../renderer/text/english/shell.ts';

/** What a folder is chosen for. */
export type FolderPurpose = keyof typeof FOLDER_DIALOGS;

/** What the system's dialog is told; Electron's OpenDialogOptions takes it. */
export interface FolderDialog {
  readonly title: string;
  readonly buttonLabel: string;
  readonly properties: ('openDirectory' | 'multiSelections' | 'createDirectory')[];
}

type Properties = FolderDialog['properties'];

const ONE: Properties = ['openDirectory'];

/** What is written into may be made in the dialog; clips lie in several folders. */
const MORE: Readonly<Partial<Record<FolderPurpose, Properties>>> = {
  clips: ['openDirectory', 'multiSelections'],
  'hand-in': ['openDirectory', 'createDirectory'],
  place: ['openDirectory', 'createDirectory'],
};

/** The dialog for a purpose. */
export function getFolderDialog(purpose: FolderPurpose): FolderDialog {
  return { ...FOLDER_DIALOGS[purpose], properties: MORE[purpose] ?? ONE };
}
