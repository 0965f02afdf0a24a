import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import { NEW_LESSON } from '../text/english/new-lesson.ts';
import { Button } from './button.tsx';
import { FolderPicker } from './folder-picker.tsx';
import type { LessonPlace } from './use-lesson-place.ts';

/** Where the new folder goes, with the way to another place. */
export function PlaceLine({ client, at }: { readonly client: DeskClient; readonly at: LessonPlace }) {
  return (
    <>
      <p className="place-line">
        <span className="folder-here">{at.place?.path ?? NEW_LESSON.noPlace}</span>
        <Button look="bare" onPress={() => void at.ask()}>
          {NEW_LESSON.anotherPlace}
        </Button>
      </p>
      {at.isPicking && (
        <FolderPicker client={client} wants="any" onChoose={at.choose} onClose={at.stopPicking} />
      )}
    </>
  );
}
