import type { Ref } from 'react';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import { useDraft } from '../../storage/use-draft.ts';
import { REVIEW } from '../../text/english/review.ts';

/** The note of a clip: kept while it is typed, decided on Enter or when the field is left. */
export function NoteField({
  lesson,
  clip,
  onNote,
  ref,
}: {
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly onNote: (act: JournalAct) => void;
  readonly ref: Ref<HTMLInputElement>;
}) {
  const draft = useDraft(`note:${lesson}:${clip.id}`);
  const decide = () => {
    if (draft.text === null) return;
    const text = draft.text.trim();
    if (text !== (clip.note ?? '')) {
      onNote({ kind: 'clip-noted', clip: clip.id, text: text === '' ? null : text.slice(0, LONGEST) });
    }
    draft.drop();
  };
  return (
    <input
      key={clip.id}
      ref={ref}
      className="note"
      aria-label={REVIEW.note}
      placeholder={REVIEW.notePlaceholder}
      maxLength={LONGEST}
      value={draft.text ?? clip.note ?? ''}
      onChange={({ currentTarget }) => draft.write(currentTarget.value)}
      onBlur={decide}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== 'Escape') return;
        event.preventDefault();
        event.stopPropagation();
        if (event.key === 'Escape') draft.drop();
        else decide();
        event.currentTarget.blur();
      }}
    />
  );
}

/** Characters that the journal takes in a note. */
const LONGEST = 2000;
