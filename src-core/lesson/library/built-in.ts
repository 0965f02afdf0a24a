import library from './exercises.json' with { type: 'json' };
import { type LibraryExercise, librarySchema } from './library.ts';

/** The exercises that come with the program; read once, so that a slip in the file ends the program and the build. */
export const BUILT_IN_EXERCISES: readonly LibraryExercise[] = librarySchema.parse(library).exercises;
