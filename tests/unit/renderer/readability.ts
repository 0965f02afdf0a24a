import { syllable } from 'syllable';

/** What a formula of readability is made of. */
interface TextCounts {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
}

/**
 * The Flesch–Kincaid grade: the school year, in the United States, whose pupils read the text with ease; the age is
 * about five years more. Kincaid, Fishburne, Rogers & Chissom, "Derivation of new readability formulas for Navy
 * enlisted personnel" (1975); the constants are from memory.
 */
export function getGrade({ words, sentences, syllables }: TextCounts): number {
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** Sentences end at a point, a colon, a question or exclamation mark, or a line's end. */
export function countText(text: string): TextCounts {
  const words = text.match(/[\p{L}][\p{L}’'-]*/gu) ?? [];
  const sentences = text.split(/[.:!?\n]+/).filter((part) => /\p{L}/u.test(part));
  return {
    words: words.length,
    sentences: sentences.length,
    syllables: words.reduce((sum, word) => sum + Math.max(1, syllable(word)), 0),
  };
}
