import { NEW_LESSON } from '../text/english/new-lesson.ts';
import { Button } from './button.tsx';
import { FolderChoice } from './folder-choice.tsx';
import type { LessonPlace } from './use-lesson-place.ts';

/** Where the new folder goes, with the way to another place. */
export function PlaceLine({ at }: { readonly at: LessonPlace }) {
  return (
    <>
      <p className="place-line">
        <span className="folder-here">{at.place?.path ?? NEW_LESSON.noPlace}</span>
        <Button look="bare" onPress={at.choice.ask}>
          {NEW_LESSON.anotherPlace}
        </Button>
      </p>
      <FolderChoice at={at.choice} />
    </>
  );
}
