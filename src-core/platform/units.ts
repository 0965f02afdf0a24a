/** An instant: milliseconds since 1970-01-01T00:00:00Z, fractions allowed. */
export type EpochMs = number;

/** A length of time in seconds, fractions allowed. */
export type Seconds = number;

/** Milliseconds in one second, for conversions between {@link EpochMs} and {@link Seconds}. */
export const MS_PER_SECOND = 1000;
