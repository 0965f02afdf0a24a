import type { Pupil } from './roster.ts';

/** What stands where another pupil's name stood. */
export const HIDDEN_NAME = '[…]';

/**
 * A function that takes other pupils' names and ids out of a text: whole names, and each part of three letters or more,
 * in any letter case. A name that the pupil shares stays. Nicknames, initials and slips of the pen are beyond it, so a
 * person reads what is given out.
 */
export function buildNameHider(pupil: Pupil, others: readonly Pupil[]): (text: string) => string {
  const own = new Set(listWords(pupil).map(fold));
  const words = [...new Set(others.flatMap(listWords))]
    .filter((word) => !own.has(fold(word)))
    .sort((one, other) => other.length - one.length);
  if (words.length === 0) return (text) => text;
  const anyOfThem = words.map((word) => word.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')).join('|');
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${anyOfThem})(?![\\p{L}\\p{N}])`, 'giu');
  return (text) => text.normalize().replace(pattern, HIDDEN_NAME);
}

function listWords({ id, given, family }: Pupil): readonly string[] {
  const parts = [given, family]
    .flatMap((name) => name.split(/[\s-]+/))
    .filter((part) => [...part].length >= 3);
  return [id, given, family, ...parts].filter((word) => word !== '').map((word) => word.normalize());
}

function fold(word: string): string {
  return word.toLowerCase();
}
