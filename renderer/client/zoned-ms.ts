/** The instant of a day and local time (`2025-05-15`, `10:40`) in a time zone; where clocks skip it, one hour off. */
export function getZonedMs(date: string, time: string, zone: string): number {
  const asUtc = Date.parse(`${date}T${time}:00Z`);
  const first = asUtc - findOffsetMs(asUtc, zone);
  // The first guess may lie on the other side of a change of clocks.
  return asUtc - findOffsetMs(first, zone);
}

function findOffsetMs(ms: number, zone: string): number {
  try {
    const parts = new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    }).formatToParts(ms);
    const read = (type: string) => Number(parts.find((part) => part.type === type)?.value);
    const shown = Date.UTC(read('year'), read('month') - 1, read('day'), read('hour'), read('minute'));
    return shown - Math.floor(ms / 60_000) * 60_000;
  } catch {
    return 0;
  }
}
