/** An amount with its noun: `1 clip`, `3 clips`. */
export function count(amount: number, one: string, many = `${one}s`): string {
  return `${amount} ${amount === 1 ? one : many}`;
}

/** A length of time in the unit a teacher would say it in: `4 s`, `37 min`, `2 h 15 min`, `3 days`. */
export function span(seconds: number): string {
  const size = Math.abs(seconds);
  if (!Number.isFinite(size)) return 'an unknown time';
  if (size < 90) return `${Number(size.toFixed(size < 10 ? 1 : 0))} s`;
  const minutes = Math.round(size / 60);
  if (minutes < 90) return `${minutes} min`;
  if (minutes >= 48 * 60) return count(Math.round(minutes / 1440), 'day');
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

/** A length of time to the second, as a clock counts it down: `40 s`, `5 min 40 s`, `6 min`. */
export function exactSpan(seconds: number): string {
  const [minutes, rest] = [Math.floor(seconds / 60), Math.floor(seconds % 60)];
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

/** How far work has come, with the time that it will still take; null: nobody can tell yet. */
export function withTimeLeft(words: string, secondsLeft: number | null): string {
  return secondsLeft === null ? words : `${words}, about ${span(Math.max(1, Math.round(secondsLeft)))} left`;
}

/** Bytes as disks are labelled: `0.4 GB`, `31 MB`. */
export function size(bytes: number): string {
  if (bytes >= 1e8) return `${(bytes / 1e9).toFixed(1)} GB`;
  return bytes >= 1e6 ? `${Math.round(bytes / 1e6)} MB` : `${Math.ceil(bytes / 1e3)} kB`;
}

/** `A`, `A and B`, `A, B and C`. */
export function list(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** A distance as people pace it: `80 cm`, `1.5 m`. */
export function distance(metres: number): string {
  return metres < 1 ? `${Math.round(metres * 100)} cm` : `${metres} m`;
}
