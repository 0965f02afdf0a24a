import { useCallback, useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { ShelvedExercise } from '../../../src-core/lesson/library/library.ts';

/** The exercises to choose from, and taking over the teacher's own. */
export interface LibraryShelf {
  /** The teacher's own among them; empty until they are read. */
  readonly exercises: readonly ShelvedExercise[];
  /** Why the file that was taken last was not taken over. */
  readonly problems: readonly Problem[];
  /** Takes an exercises.json over in the place of the one before; empty text: forgets the teacher's own. */
  readonly take: (text: string) => Promise<void>;
}

/** The library of exercises of this desk. */
export function useLibrary(client: DeskClient): LibraryShelf {
  const [exercises, setExercises] = useState<readonly ShelvedExercise[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    let isWanted = true;
    void client.request('readLibrary', {}).then((reply) => {
      if (isWanted && reply.ok) setExercises(reply.value.exercises);
    });
    return () => {
      isWanted = false;
    };
  }, [client]);
  const take = useCallback(
    async (text: string) => {
      const reply = await client.request('importLibrary', { text });
      setProblems(reply.problems);
      if (reply.ok) setExercises(reply.value.exercises);
    },
    [client],
  );
  return { exercises, problems, take };
}
