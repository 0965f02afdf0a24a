// File names and the texts of foreign codes are chosen by others: a line end in one would break the report into
// lines that mean nothing, and other control characters would steer the terminal.
const STEERING = /[\p{Cc}\u2028\u2029\u202A-\u202E\u2066-\u2069]/gu;

/** Text for one line of a terminal: line ends, control and direction characters become `\uFFFD`. */
export function toOneLine(text: string): string {
  return text.replace(STEERING, '\uFFFD');
}
