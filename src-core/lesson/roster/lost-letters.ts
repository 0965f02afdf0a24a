/** Whether a text was read from something that is not UTF-8: letters became U+FFFD, or every other byte is zero. */
export function hasLostLetters(text: string): boolean {
  return text.includes('\uFFFD') || text.includes('\u0000');
}
