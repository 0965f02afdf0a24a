import type { LibraryExercise } from '../../../src-core/lesson/library/library.ts';

/** The exercises that every typed word begins a word of, those found by name first. */
export function findExercises<Exercise extends Pick<LibraryExercise, 'name' | 'muscles' | 'equipment'>>(
  library: readonly Exercise[],
  text: string,
): readonly Exercise[] {
  const typed = splitWords(text);
  const hits = (words: string) => {
    const parts = splitWords(words);
    return typed.every((start) => parts.some((part) => part.startsWith(start)));
  };
  const byName = library.filter(({ name }) => hits(name));
  const others = library.filter(
    (one) => !byName.includes(one) && hits([one.name, one.muscles, one.equipment ?? ''].join(' ')),
  );
  return [...byName, ...others];
}

function splitWords(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
