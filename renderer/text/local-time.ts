/** The ways a lesson tells time, in the teacher's language and the school's zone. */
export interface LocalTimes {
  /** `10:46`. */
  readonly minute: (ms: number) => string;
  /** `10:46:03`. */
  readonly second: (ms: number) => string;
  /** `Thu 15 May`, of a day written `2025-05-15`. */
  readonly day: (date: string) => string;
  /** `15 May 2025`, of the same: where days of several years meet. */
  readonly dayOfYear: (date: string) => string;
  /** `Thu 15 May, 10:46`. */
  readonly dayAndMinute: (ms: number) => string;
}

/** How times and days are written for a language (null: the machine's own) in a time zone. */
export function buildLocalTimes(language: string | null, zone: string): LocalTimes {
  const locale = language ?? undefined;
  const timeZone = isZone(zone) ? zone : 'UTC';
  const clock = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone } as const;
  const minute = new Intl.DateTimeFormat(locale, clock);
  const second = new Intl.DateTimeFormat(locale, { ...clock, second: '2-digit' });
  const date = { weekday: 'short', day: 'numeric', month: 'short' } as const;
  const day = new Intl.DateTimeFormat(locale, { ...date, timeZone: 'UTC' });
  const dayOfYear = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' });
  const dayAndMinute = new Intl.DateTimeFormat(locale, { ...date, ...clock });
  return {
    minute: (ms) => minute.format(ms),
    second: (ms) => second.format(ms),
    day: (written) => day.format(Date.parse(`${written}T12:00:00Z`)),
    dayOfYear: (written) => dayOfYear.format(Date.parse(`${written}T12:00:00Z`)),
    dayAndMinute: (ms) => dayAndMinute.format(ms),
  };
}

function isZone(zone: string): boolean {
  try {
    Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
