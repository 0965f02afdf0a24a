import { BUILT_IN_EXERCISES } from '../../../src-core/lesson/library/built-in.ts';
import { mergeLibraries, type ShelvedExercise } from '../../../src-core/lesson/library/library.ts';

const BUILT_IN = mergeLibraries(BUILT_IN_EXERCISES, []);

/** The exercises to choose from. */
export function useLibrary(): readonly ShelvedExercise[] {
  return BUILT_IN;
}
