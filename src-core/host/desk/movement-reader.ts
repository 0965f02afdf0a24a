import { addMovements, listWantedMovements, readMovements } from '../../app/read-evidence.ts';
import type { SessionState } from './session-state.ts';

/** Reads the movements that proposals want, in the background of whatever else a session does. */
export interface MovementReader {
  /** To be told after each grading: a clip was watched, or moved to a slot with another exercise. */
  readonly look: () => void;
  /** Resolves when nothing more is wanted. */
  readonly settle: () => Promise<void>;
}

/** Without a wish to stop: a movement is read from the cache in a moment. */
const JOB = { signal: new AbortController().signal, onProgress: () => {} };

/** A reader for this session; `regrade` is called with each batch that was read. */
export function openMovementReader(state: SessionState, regrade: () => void): MovementReader {
  let running: Promise<void> | null = null;
  const read = async () => {
    for (;;) {
      const wanted = listWantedMovements(state.graded);
      if (wanted.length === 0) return;
      const found = await readMovements(state.ports, wanted, JOB);
      state.clips = addMovements(state.clips, found);
      regrade();
    }
  };
  const look = () => {
    // What is wanted meanwhile is seen by the run under way, which looks again before it ends.
    if (running !== null || listWantedMovements(state.graded).length === 0) return;
    running = read()
      .catch(() => {})
      .finally(() => {
        running = null;
      });
  };
  return {
    look,
    settle: async () => {
      look();
      await running;
    },
  };
}
