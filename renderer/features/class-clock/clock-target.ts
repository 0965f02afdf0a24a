/** What stands in the address for the class clock, and for a lesson that began off its bell: `class-clock+300` seconds. */
const TARGET = /^class-clock([+-]\d{1,9})?$/;

/** How much later than its bell the class of an open class clock began, in milliseconds; null: no class clock is open. */
export function readClockTarget(target: string | null): number | null {
  const match = TARGET.exec(target ?? '');
  return match ? Number(match[1] ?? 0) * 1000 : null;
}

/** The address part of a class clock with a shift; {@link readClockTarget} undoes it, to the whole second. */
export function buildClockTarget(shiftMs: number): string {
  const seconds = Math.round(shiftMs / 1000);
  if (seconds === 0) return 'class-clock';
  return `class-clock${seconds < 0 ? '-' : '+'}${Math.abs(seconds)}`;
}
