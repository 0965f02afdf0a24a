/** A text as a part of a file's name on any system: its letters and digits, whatever stood between them `between`. */
export function toPlainName(text: string, between = '-'): string {
  return text
    .normalize('NFC')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .join(between);
}
