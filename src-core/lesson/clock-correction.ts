/** Longest correction that a tablet's clock can be given, in seconds: 400 days. */
export const LONGEST_CORRECTION_SECONDS = 400 * 86_400;

/**
 * Reads a clock correction as typed: `31`, `+31`, `-0:45`, `−1:02:00` (hours, minutes, seconds). Null where it is no
 * length of time.
 */
export function parseCorrection(text: string): number | null {
  const match = /^\s*([+\-−]?)\s*(\d+(?::[0-5]?\d){0,2}(?:[.,]\d+)?)\s*s?\s*$/.exec(text);
  if (!match) return null;
  const [, sign = '', amount = ''] = match;
  const seconds = amount
    .replace(',', '.')
    .split(':')
    .reduce((sum, part) => sum * 60 + Number(part), 0);
  if (seconds > LONGEST_CORRECTION_SECONDS) return null;
  return sign === '' || sign === '+' ? seconds : -seconds;
}

/** A correction as it can be typed again, to a tenth below a minute, else to a second: `+31.4`, `-2:45`, `+1:02:00`. */
export function writeCorrection(seconds: number): string {
  const sign = seconds < 0 ? '-' : '+';
  const tenths = Math.abs(Math.round(seconds * 10) / 10);
  const whole = Math.round(tenths);
  if (whole < 60) return `${sign}${tenths}`;
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60];
  const parts = hours > 0 ? [hours, pad(minutes), pad(rest)] : [minutes, pad(rest)];
  return sign + parts.join(':');
}

function pad(part: number): string {
  return String(part).padStart(2, '0');
}
