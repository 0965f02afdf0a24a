/**
 * A word in the pieces that may stand on different lines: broken after a hyphen between two letters and two more. The
 * hyphen stays with the piece before it; a word without one is a piece by itself.
 */
export function splitAtHyphens(word: string): readonly string[] {
  return word.split(/(?<=\p{L}{2}-)(?=\p{L}{2})/u);
}

/** Signs of a text in running type, by how wide they may be in any of our four faces, in ems. */
const WIDTHS: readonly (readonly [signs: RegExp, ems: number])[] = [
  [/[!'(),.:;|·\-[\]{}Ifijlt]/, 0.4],
  [/[Jcrsz]/, 0.5],
  [/[%@MWmÆæŒœŉ\u039c\u0386-\u038fЀ-ЏЖМФШЩЫЮжмфшщыюљњ]/, 1],
  [/[a-vx-z0-9\u03ac-\u03bf\u03c1-\u03c5\u03c7\u03ca-\u03cd]/, 0.6],
  [/[абвгдезийклнопрсухцчъьэ]/, 0.65],
  [/\p{L}/u, 0.75],
];

/**
 * How wide a text may be at most, in ems: never less than what any face that paper is set in gives it, as long as its
 * letters are Latin, Greek or Cyrillic.
 */
export function estimateEms(text: string): number {
  return [...text.normalize('NFC')].reduce((sum, letter) => sum + estimateLetter(letter), 0);
}

function estimateLetter(letter: string): number {
  // A caron beside its letter makes it wider; all other marks stand above or below.
  const isPlain = /\p{Script=Latin}/u.test(letter) && !/[ďľŉ]/.test(letter);
  const plain = isPlain ? (letter.normalize('NFD')[0] ?? letter) : letter;
  return WIDTHS.find(([signs]) => signs.test(plain))?.[1] ?? 1;
}
