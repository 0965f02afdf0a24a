import type { LessonNames } from '../../client/lesson-names.ts';
import { LIBRARY } from '../../text/english/plan-stations.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
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
      {problems.map((problem) => {
        const { what, todo } = describeProblem(problem, names);
        return (
          <p key={what} className="need" role="alert">
            <b>{what}</b> {todo}
          </p>
        );
      })}
      <div className="rem">
        <label className="file-word">
          {LIBRARY.take}{' '}
          <input
            type="file"
            accept=".json,application/json"
            onChange={({ target }) => {
              const [file] = target.files ?? [];
              if (file) void file.text().then(take);
              target.value = '';
            }}
          />
        </label>
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
