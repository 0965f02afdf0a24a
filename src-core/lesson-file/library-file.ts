import { type LibraryExercise, librarySchema } from '../lesson/library/library.ts';
import type { LibraryProblem } from '../lesson/planning-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import { findJsonError } from './json-error.ts';
import { readSchemaProblems } from './schema-problem.ts';

/** The version of exercises.json that is written, and the newest that is read. */
const LIBRARY_VERSION = 1;

/** Reads a library of exercises; all of it or nothing, with every problem found. */
export function parseLibrary(text: string): Outcome<readonly LibraryExercise[], LibraryProblem> {
  const plain = text.replace(/^\uFEFF/, '');
  let content: { readonly format?: unknown; readonly version?: unknown } | null;
  try {
    content = JSON.parse(plain);
  } catch {
    const { line, column } = findJsonError(plain) ?? { line: 1, column: 1 };
    return fail({ code: 'library-not-json', line, column });
  }
  if (content?.format !== 'routemark-exercises') return fail({ code: 'library-not-ours' });
  const { version } = content;
  if (typeof version === 'number' && version > LIBRARY_VERSION) {
    return fail({ code: 'library-newer', version, newest: LIBRARY_VERSION });
  }
  const parsed = librarySchema.safeParse(content);
  if (!parsed.success) {
    return fail(
      ...readSchemaProblems(parsed.error, content).map(
        (problem): LibraryProblem => ({ code: 'library-field', ...problem }),
      ),
    );
  }
  const { exercises } = parsed.data;
  const twice = exercises.findIndex(({ code }, at) => exercises.findIndex((one) => one.code === code) < at);
  const value = exercises[twice]?.code;
  return value === undefined
    ? succeed(exercises)
    : fail({ code: 'library-code-twice', path: `exercises[${twice}].code`, value });
}

/** exercises.json's text for a library, keys in the schema's order. */
export function buildLibraryText(exercises: readonly LibraryExercise[]): string {
  const library = librarySchema.parse({
    format: 'routemark-exercises',
    version: LIBRARY_VERSION,
    exercises,
  });
  return `${JSON.stringify(library, null, 2)}\n`;
}
