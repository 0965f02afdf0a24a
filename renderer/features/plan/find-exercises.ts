/** An exercise of the library, as much of it as choosing one needs. */
export interface LibraryChoice {
  readonly code: string;
  readonly name: string;
  /** What it asks of the body, how it is counted, what to mind: one line. */
  readonly line: string;
  /** Other words that find it. */
  readonly alike: readonly string[];
}

/** The exercises that every typed word begins a word of, those found by name first. */
export function findExercises(library: readonly LibraryChoice[], text: string): readonly LibraryChoice[] {
  const typed = text.trim().toLowerCase().split(/\s+/);
  const hits = (words: string) => {
    const parts = words.toLowerCase().split(/[^\p{L}\p{N}]+/u);
    return typed.every((start) => parts.some((part) => part.startsWith(start)));
  };
  const byName = library.filter(({ name }) => hits(name));
  const others = library.filter((one) => !byName.includes(one) && hits([one.name, ...one.alike].join(' ')));
  return [...byName, ...others];
}
