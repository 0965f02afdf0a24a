import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import type { HandInChoice } from './use-choice.ts';
import type { HandInDraft } from './use-hand-in-draft.ts';

/** What the proof of any kind is drawn from, and what lets it be chosen otherwise. */
export interface PreviewProps {
  readonly fileName: string;
  readonly choice: HandInChoice;
  readonly draft: HandInDraft;
  readonly desk: LessonDesk;
  readonly deskView: DeskView;
  readonly names: LessonNames;
}
