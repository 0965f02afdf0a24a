import { useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { ShelvedExercise } from '../../../src-core/lesson/library/library.ts';

/** The exercises to choose from, the teacher's own among them; empty until they are read. */
export function useLibrary(client: DeskClient): readonly ShelvedExercise[] {
  const [exercises, setExercises] = useState<readonly ShelvedExercise[]>([]);
  useEffect(() => {
    let isWanted = true;
    void client.request('readLibrary', {}).then((reply) => {
      if (isWanted && reply.ok) setExercises(reply.value.exercises);
    });
    return () => {
      isWanted = false;
    };
  }, [client]);
  return exercises;
}
