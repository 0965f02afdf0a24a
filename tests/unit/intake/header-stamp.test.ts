import { describe, expect, test } from 'vitest';
import { chooseStamp } from '../../../src-core/intake/choose-stamp.ts';
import { date, iso, type Said, stampInput } from './stamp-input.ts';

const stamp = (said: Said) => chooseStamp(stampInput(said));
const MARCH = '2026-03-02T14:05:06Z';

describe('a header', () => {
  test('modified one clip length after creation names the start', () => {
    expect(stamp({ created: MARCH, modified: '2026-03-02T14:05:18Z' })).toMatchObject({
      meaning: 'start',
      reason: 'modified-after-duration',
      startMs: Date.parse(MARCH),
      uncertaintySeconds: 2,
    });
  });

  test('created and modified at once, of a clip of a second, shows nothing', () => {
    expect(stamp({ created: MARCH, facts: { durationSeconds: 1 } })).toMatchObject({ meaning: 'unknown' });
  });

  test('equal to the start in the name names the start', () => {
    expect(stamp({ created: MARCH, name: 'VID_20260302_090506.mp4' })).toMatchObject({
      meaning: 'start',
      trust: 'firm',
      reason: 'name-agrees-with-header',
    });
  });

  test('one clip length after the start in the name names the stop', () => {
    const found = stamp({ created: MARCH, name: 'VID_20260302_090454.mp4' });
    expect(found).toMatchObject({ meaning: 'stop', trust: 'firm', reason: 'name-plus-duration-is-header' });
    expect(iso(found.readMs)).toBe(MARCH);
    expect(iso(found.startMs)).toBe('2026-03-02T14:04:54Z');
  });

  test('matches the name without knowing the zone, by whole quarters of an hour', () => {
    const found = stamp({ created: MARCH, name: 'VID_20260302_090454.mp4', zone: null });
    expect(found).toMatchObject({ meaning: 'stop', trust: 'firm' });
  });

  test('matches a name in the hour that the clocks showed twice', () => {
    const found = stamp({ created: '2026-11-01T06:30:12Z', name: 'VID_20261101_013000.mp4' });
    expect(found).toMatchObject({ meaning: 'stop' });
    expect(iso(found.startMs)).toBe('2026-11-01T06:30:00Z');
  });

  test('with a modification of its own day is no stop, whatever the name says', () => {
    const found = stamp({
      created: MARCH,
      modified: '2026-03-03T08:00:00Z',
      name: 'VID_20260302_090454.mp4',
    });
    expect(found.meaning).toBe('unknown');
  });

  test('of stock Android names the stop', () => {
    const found = stamp({ created: MARCH, android: true });
    expect(found).toMatchObject({ meaning: 'stop', trust: 'fair', reason: 'android-writes-at-stop' });
    expect(iso(found.startMs)).toBe('2026-03-02T14:04:54Z');
  });

  test('of Android and of unknown length cannot be counted back', () => {
    const found = stamp({ created: MARCH, android: true, facts: { durationSeconds: null } });
    expect(found).toMatchObject({ meaning: 'unknown', uncertaintySeconds: Number.POSITIVE_INFINITY });
  });

  test('that nothing explains stands as it is, give or take one clip length', () => {
    expect(stamp({ created: MARCH })).toMatchObject({
      readMs: Date.parse(MARCH),
      startMs: Date.parse(MARCH),
      meaning: 'unknown',
      uncertaintySeconds: 12,
      trust: 'fair',
      reason: 'header-alone',
    });
  });

  test('that a name denies is kept, doubted, and the difference told', () => {
    const found = stamp({ created: MARCH, name: 'VID_20260227_101500.mp4' });
    expect(found).toMatchObject({ source: 'movie-header', trust: 'weak' });
    expect(found.problems).toMatchObject([{ code: 'stamp-sources-disagree', other: 'file-name' }]);
  });

  test('that holds the camera’s own clock is found out by the name, and read in the school’s zone', () => {
    const found = stamp({ created: '2026-03-02T09:05:18Z', name: '20260302_090506.mp4' });
    expect(found).toMatchObject({
      reason: 'header-local-by-custom',
      meaning: 'stop',
      readMs: null,
      local: '2026-03-02T09:05:18',
    });
    expect(iso(found.startMs)).toBe(MARCH);
  });
});

describe('whose clock a header is on', () => {
  test('MP4: UTC by standard', () => {
    expect(stamp({ created: MARCH }).problems).toEqual([]);
  });

  test('MOV without other evidence: the zone is uncertain by as much as the school lies from UTC', () => {
    const found = stamp({ created: MARCH, facts: { container: 'quicktime' } });
    expect(found).toMatchObject({
      readMs: Date.parse(MARCH),
      trust: 'weak',
      uncertaintySeconds: 12 + 5 * 3600,
    });
    expect(found.problems).toEqual([{ code: 'stamp-zone-unknown', source: 'movie-header' }]);
  });

  test('MOV without other evidence and without a zone: up to fourteen hours', () => {
    const found = stamp({ created: MARCH, facts: { container: 'quicktime' }, zone: null });
    expect(found.uncertaintySeconds).toBe(12 + 14 * 3600);
  });

  test('MOV in a school on UTC: both readings are one', () => {
    const found = stamp({ created: MARCH, facts: { container: 'quicktime' }, zone: 'Europe/London' });
    expect(found).toMatchObject({ trust: 'fair', uncertaintySeconds: 12 });
  });

  test('MOV by Apple’s recorder, or with a name that fits: UTC', () => {
    const apple = stamp({ created: MARCH, facts: { container: 'quicktime' }, make: 'Apple' });
    expect(apple).toMatchObject({ problems: [] });
    const named = stamp({ created: MARCH, facts: { container: 'quicktime' }, name: '20260302_090506.mov' });
    expect(named).toMatchObject({ problems: [], trust: 'firm' });
  });
});

describe('headers of tracks', () => {
  const unset = '1904-01-01T00:00:00Z';

  test('stand in for the movie’s own where that was never set, at one grade less', () => {
    const found = stamp({
      created: unset,
      dates: [date('track-header', unset), date('media-header', MARCH)],
    });
    expect(found).toMatchObject({ source: 'media-header', trust: 'weak', reason: 'header-implausible' });
    expect(found.problems).toEqual([{ code: 'stamp-header-unusable', field: 'movie-header', raw: unset }]);
  });

  test('are explained by the name like the movie’s own', () => {
    const found = stamp({
      created: unset,
      dates: [date('media-header', MARCH)],
      name: 'VID_20260302_090454.mp4',
    });
    expect(found).toMatchObject({ source: 'media-header', meaning: 'stop', trust: 'fair' });
  });

  test('are not asked where the movie’s own will do', () => {
    const found = stamp({ created: MARCH, dates: [date('media-header', '2020-01-01T00:00:00Z')] });
    expect(found).toMatchObject({ source: 'movie-header', problems: [] });
  });
});
