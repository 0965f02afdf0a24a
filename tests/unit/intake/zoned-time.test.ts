import { describe, expect, test } from 'vitest';
import { findLocalInstants, findLocalTime, findOffsetMinutes } from '../../../src-core/intake/zoned-time.ts';

const unique = (text: string) => ({ kind: 'unique', ms: Date.parse(text) });

describe('a local time in a zone', () => {
  test('keeps its order over the spring change: one second apart is one second apart', () => {
    expect(findLocalInstants('2026-03-08T01:59:59', 'America/New_York')).toEqual(
      unique('2026-03-08T06:59:59Z'),
    );
    expect(findLocalInstants('2026-03-08T03:00:00', 'America/New_York')).toEqual(
      unique('2026-03-08T07:00:00Z'),
    );
  });

  test('that the spring change skipped is none', () => {
    expect(findLocalInstants('2026-03-08T02:30:00', 'America/New_York')).toEqual({ kind: 'skipped' });
  });

  test.each([
    ['America/New_York', '2026-11-01T01:30:00', '2026-11-01T05:30:00Z', '2026-11-01T06:30:00Z'],
    ['Europe/London', '2026-10-25T01:30:00', '2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z'],
  ])('that the autumn change showed twice in %s is both instants', (zone, local, earlier, later) => {
    expect(findLocalInstants(local, zone)).toEqual({
      kind: 'ambiguous',
      earlierMs: Date.parse(earlier),
      laterMs: Date.parse(later),
    });
  });

  test.each([
    ['2026-03-02T09:05:06', 'Harbour/Quay'],
    ['2026-02-30T09:05:06', 'Europe/London'],
    ['noon', 'Europe/London'],
  ])('%s in %s is invalid', (local, zone) => {
    expect(findLocalInstants(local, zone)).toEqual({ kind: 'invalid' });
  });
});

describe('an instant on a zone’s clock', () => {
  test('is the time the teacher knows: 18:51 UTC is 14:51 in New York in summer', () => {
    expect(findLocalTime(Date.parse('2021-06-23T18:51:37Z'), 'America/New_York')).toBe('2021-06-23T14:51:37');
  });

  test('goes back to itself in every hour of two days around the changes', () => {
    for (const day of ['2026-03-08', '2026-11-01']) {
      for (let hour = 0; hour < 48; hour += 1) {
        const ms = Date.parse(`${day}T00:00:00Z`) + hour * 3_600_000;
        const local = findLocalTime(ms, 'America/New_York') ?? '';
        const found = findLocalInstants(local, 'America/New_York');
        const all =
          found.kind === 'unique'
            ? [found.ms]
            : found.kind === 'ambiguous'
              ? [found.earlierMs, found.laterMs]
              : [];
        expect(all).toContain(ms);
      }
    }
  });

  test('has a quarter-hour offset where the zone has one, and none in an unknown zone', () => {
    expect(findOffsetMinutes(Date.parse('2026-03-02T12:00:00Z'), 'Asia/Kathmandu')).toBe(345);
    expect(findOffsetMinutes(0, 'Harbour/Quay')).toBeNull();
    expect(findLocalTime(Number.POSITIVE_INFINITY, 'Europe/London')).toBeNull();
  });
});
