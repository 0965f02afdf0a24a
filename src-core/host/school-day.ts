/** The day in a school's IANA zone at an instant, `2025-05-15`: days sort by their letters, and journals write them so. */
export function getSchoolDay(zone: string, ms: number): string {
  return new Intl.DateTimeFormat('en-CA', { dateStyle: 'short', timeZone: zone }).format(ms);
}
