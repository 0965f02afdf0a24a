import type { LessonNames } from '../../client/lesson-names.ts';
import { LIBRARY } from '../../text/english/plan-stations.ts';
import { Button } from '../../ui/button.tsx';
import { FileWord } from '../../ui/file-word.tsx';
import { ProblemLines } from '../../ui/problem-lines.tsx';
import type { LibraryShelf } from './use-library.ts';

/** The teacher's own exercises: taken over from a file, and forgotten again. */
export function LibraryLine({
  shelf: { exercises, problems, take },
  names,
}: {
  readonly shelf: LibraryShelf;
  readonly names: LessonNames;
}) {
  const own = exercises.filter(({ from }) => from === 'own').length;
  return (
    <div className="library-line">
      <ProblemLines problems={problems} names={names} />
      <div className="rem">
        <FileWord
          word={LIBRARY.take}
          accept=".json,application/json"
          onTake={(file) => void file.text().then(take)}
        />
        <span className="pen" role="status">
          {own > 0 && LIBRARY.own(own)}
        </span>
        {own > 0 && (
          <Button look="bare" onPress={() => void take('')}>
            {LIBRARY.forget}
          </Button>
        )}
      </div>
    </div>
  );
}
