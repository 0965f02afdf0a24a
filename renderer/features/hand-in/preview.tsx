import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import type { HandInPreview } from '../../../src-core/contract/hand-in-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { SetPreview } from './set-preview.tsx';
import { SheetPreview } from './sheet-preview.tsx';
import type { HandInChoice } from './use-choice.ts';
import type { HandInDraft } from './use-hand-in-draft.ts';

/** What a preview is made from. */
export interface PreviewProps {
  readonly fileName: string;
  readonly choice: HandInChoice;
  readonly draft: HandInDraft;
  readonly desk: LessonDesk;
  readonly deskView: DeskView;
  readonly names: LessonNames;
}

/** The proof of the print, by kind. */
export function Preview({ preview, ...props }: PreviewProps & { readonly preview: HandInPreview }) {
  return preview.kind === 'oneroster' ? (
    <SetPreview {...props} set={preview} />
  ) : (
    <SheetPreview {...props} preview={preview} />
  );
}
