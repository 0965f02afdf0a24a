import { describe, expect, test } from 'vitest';
import { chooseStamp } from '../../../src-core/intake/choose-stamp.ts';
import { date, iso, type Said, stampInput } from './stamp-input.ts';

const stamp = (said: Said) => chooseStamp(stampInput(said));
const MARCH = '2026-03-02T14:05:06Z';

describe('a recording date in words', () => {
  test('outranks the header, which is not asked for its meaning', () => {
    const found = stamp({ created: MARCH, dates: [date('recording-key', '2026-03-02T14:04:54Z')] });
    expect(found).toMatchObject({
      source: 'recording-key',
      meaning: 'start',
      trust: 'firm',
      uncertaintySeconds: 1,
    });
    expect(iso(found.startMs)).toBe('2026-03-02T14:04:54Z');
    expect(found.problems).toEqual([]);
  });

  test('that the header contradicts is believed, and the difference is told', () => {
    const found = stamp({ created: '2026-03-02T15:05:06Z', dates: [date('recording-key', MARCH)] });
    expect(iso(found.startMs)).toBe(MARCH);
    expect(found.problems).toEqual([
      {
        code: 'stamp-sources-disagree',
        chosen: 'recording-key',
        other: 'movie-header',
        differenceSeconds: 3588,
      },
    ]);
  });

  test('DATE_RECORDED outranks the date of muxing', () => {
    const found = stamp({
      facts: { container: 'matroska' },
      dates: [date('segment-date', '2026-03-09T08:00:00Z'), date('recorded-tag', MARCH)],
    });
    expect(found).toMatchObject({ source: 'recorded-tag', meaning: 'start', trust: 'firm' });
  });

  test('that is impossible is told and passed over', () => {
    const found = stamp({ created: MARCH, dates: [date('recording-key', '1970-01-01T00:00:00Z')] });
    expect(found.source).toBe('movie-header');
    expect(found.problems).toEqual([
      { code: 'stamp-header-unusable', field: 'recording-key', raw: '1970-01-01T00:00:00Z' },
    ]);
  });

  test('that is a year alone is refused as a time', () => {
    const found = stamp({ dates: [date('day-tag', '2026')] });
    expect(found.source).toBe('none');
    expect(found.problems).toEqual([{ code: 'stamp-header-unusable', field: 'day-tag', raw: '2026' }]);
  });

  test('that is a day alone is told as such', () => {
    const found = stamp({ dates: [date('day-tag', '2026-03-02')] });
    expect(found.problems).toEqual([{ code: 'stamp-date-without-time', date: '2026-03-02' }]);
  });
});

describe('local times', () => {
  const still = (text: string, zone?: string | null) =>
    stamp({
      facts: {
        holds: 'still',
        container: 'jpeg',
        durationSeconds: null,
        dates: [date('exif-original', text)],
      },
      ...(zone === undefined ? {} : { zone }),
    });

  test('are read in the school’s zone', () => {
    const found = still('2026-03-02T09:05:06');
    expect(found).toMatchObject({
      readMs: null,
      local: '2026-03-02T09:05:06',
      trust: 'fair',
      meaning: 'start',
    });
    expect(iso(found.startMs)).toBe(MARCH);
  });

  test('that the clocks showed twice are flagged, not guessed', () => {
    const found = still('2026-11-01T01:30:00');
    expect(found).toMatchObject({ startMs: null, trust: 'weak', reason: 'local-time-ambiguous' });
    expect(found.problems).toEqual([{ code: 'stamp-local-ambiguous', local: '2026-11-01T01:30:00' }]);
  });

  test('that the clocks never showed are flagged', () => {
    const found = still('2026-03-08T02:30:00');
    expect(found).toMatchObject({ startMs: null, trust: 'weak', reason: 'local-time-skipped' });
    expect(found.problems).toEqual([{ code: 'stamp-local-skipped', local: '2026-03-08T02:30:00' }]);
  });

  test('without a zone stay local', () => {
    const found = still('2026-03-02T09:05:06', null);
    expect(found).toMatchObject({ startMs: null, local: '2026-03-02T09:05:06', trust: 'weak' });
    expect(found.problems).toEqual([{ code: 'stamp-zone-unknown', source: 'exif-original' }]);
  });

  test('of an AVI may be of the beginning or the end', () => {
    const found = stamp({ facts: { container: 'avi', dates: [date('riff-date', '2026-03-02T09:05:06')] } });
    expect(found).toMatchObject({
      source: 'riff-date',
      meaning: 'unknown',
      uncertaintySeconds: 12,
      trust: 'fair',
    });
  });

  test('with an offset of their own need no zone', () => {
    const found = still('2026-03-02T09:05:06-05:00', null);
    expect(found).toMatchObject({ readMs: Date.parse(MARCH), local: null, trust: 'firm' });
  });
});

describe('when the file holds no date', () => {
  test('a device’s name gives the start', () => {
    const found = stamp({ name: 'VID_20260302_090506.mp4', fileTime: '2026-03-05T10:00:00Z' });
    expect(found).toMatchObject({
      source: 'file-name',
      meaning: 'start',
      trust: 'fair',
      reason: 'name-only',
    });
    expect(iso(found.startMs)).toBe(MARCH);
    expect(found.problems).toEqual([]);
  });

  test('a device’s name outranks the date of muxing', () => {
    const found = stamp({
      name: 'VID_20260302_090506.mp4',
      dates: [date('segment-date', '2026-03-05T10:00:00Z')],
    });
    expect(found.source).toBe('file-name');
  });

  test('the date of muxing is no start', () => {
    const found = stamp({ facts: { container: 'matroska' }, dates: [date('segment-date', MARCH)] });
    expect(found).toMatchObject({
      meaning: 'unknown',
      trust: 'weak',
      reason: 'file-creation-only',
      uncertaintySeconds: Number.POSITIVE_INFINITY,
    });
  });

  test('the file system’s date is the last resort and weak', () => {
    const found = stamp({ fileTime: MARCH });
    expect(found).toMatchObject({ source: 'file-time', trust: 'weak', reason: 'file-time-only' });
    expect(iso(found.startMs)).toBe(MARCH);
  });

  test('an unreadable file still has its name and its file time', () => {
    expect(stamp({ facts: null, name: '20260302_090506.mp4' }).source).toBe('file-name');
    expect(stamp({ facts: null, fileTime: MARCH }).source).toBe('file-time');
  });

  test('nothing is nothing', () => {
    expect(stamp({ facts: null })).toEqual({
      readMs: null,
      local: null,
      source: 'none',
      meaning: 'unknown',
      startMs: null,
      uncertaintySeconds: Number.POSITIVE_INFINITY,
      trust: 'none',
      reason: 'nothing-usable',
      problems: [],
    });
  });
});

describe('the window of plausible dates', () => {
  const now = '2026-11-25T12:00:00Z';
  test.each([
    ['1904-01-01T00:00:00Z', false],
    ['1960-03-01T14:05:06Z', false],
    ['1970-01-01T00:00:00Z', false],
    ['1989-12-31T23:59:59Z', false],
    ['1990-01-01T00:00:00Z', true],
    ['2001-01-01T00:00:00Z', false],
    ['2001-01-01T00:00:01Z', true],
    ['2026-11-26T12:00:00Z', true],
    ['2026-11-26T12:00:01Z', false],
    ['2040-02-06T06:28:15Z', false],
  ])('%s is inside: %s', (created, isInside) => {
    expect(stamp({ created, now }).source === 'movie-header').toBe(isInside);
  });

  test('the full counter stays a sentinel after 2040, and the day 2038 does not wrap', () => {
    const later = '2045-01-01T00:00:00Z';
    expect(stamp({ created: '2040-02-06T06:28:15Z', now: later }).source).toBe('none');
    expect(iso(stamp({ created: '2038-01-19T03:14:08Z', now: later }).readMs)).toBe('2038-01-19T03:14:08Z');
  });

  test('holds for names and for the file system too', () => {
    expect(stamp({ name: 'VID_19800101_000000.mp4' }).source).toBe('none');
    expect(stamp({ fileTime: '2097-01-01T00:00:00Z' }).source).toBe('none');
  });
});
