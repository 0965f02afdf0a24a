import { describe, expect, test } from 'vitest';
import { chooseStamp } from '../../src-core/intake/choose-stamp.ts';
import { readDateElement } from '../../src-core/media/ebml/date-element.ts';
import { date, iso, type Said, stampInput } from '../unit/intake/stamp-input.ts';
import { movie } from '../unit/media/build-boxes.ts';
import { int64 } from '../unit/media/build-elements.ts';
import { getFacts, showDate } from '../unit/media/read-facts.ts';

// Published values of dates in containers, each with its source. [computed] marks arithmetic on a published number.

const stamp = (said: Said) => chooseStamp(stampInput(said));

describe('header dates count seconds from 1904-01-01 UTC (ISO/IEC 14496-12:2012 §8.2.2.3)', () => {
  test.each([
    // FFmpeg, libavformat/mov.c, mov_metadata_creation_time: the offset to 1970 is 2082844800 s [computed].
    [0, '1904-01-01T00:00:00Z'],
    [2_082_844_800, '1970-01-01T00:00:00Z'],
    [3_061_152_000, '2001-01-01T00:00:00Z'],
    [3_855_305_106, '2026-03-02T14:05:06Z'],
    [3_878_409_600, '2026-11-25T00:00:00Z'],
    [4_230_328_448, '2038-01-19T03:14:08Z'],
    [4_294_967_295, '2040-02-06T06:28:15Z'],
    // github.com/gopro/gpmf-parser/issues/134: the raw value of an action camera.
    [3_671_513_887, '2020-05-05T08:58:07Z'],
  ])('%i is %s in both widths', async (created, text) => {
    for (const version of [0, 1] as const) {
      expect(showDate(await getFacts(movie({ created, version })), 'movie-header')).toBe(text);
    }
  });

  test('the offset is 66 years of 365 days and 17 leap days: 0x7C25B080', () => {
    expect((66 * 365 + 17) * 86_400).toBe(0x7c25b080);
  });
});

describe('EBML dates count nanoseconds from 2001-01-01 UTC (RFC 8794 §7.6)', () => {
  test.each([
    [0n, '2001-01-01T00:00:00Z'],
    [794_153_106_000_000_000n, '2026-03-02T14:05:06Z'],
    // The ends of the range [computed, Python's datetime]. RFC 8794 prints 1708-09-11T00:12:44.854775808 and
    // 2293-04-11T11:47:16.854775807: the first eleven days off, the second twelve hours; its arithmetic holds.
    [-(2n ** 63n), '1708-09-22T00:12:43.145Z'],
    [2n ** 63n - 1n, '2293-04-11T23:47:16.854Z'],
  ])('%s ns is %s', (nanoseconds, text) => {
    expect(iso(Math.floor(readDateElement(int64(nanoseconds))?.instantMs ?? Number.NaN))).toBe(text);
  });
});

describe('stock Android writes the stop (AOSP, MPEG4Writer::writeMvhdBox: time(NULL), same value twice)', () => {
  test('photoprism #1388: 36.890 s long, encoded 18:51:37 UTC, named 14:50:59 by a clock on EDT', () => {
    const said: Said = {
      created: '2021-06-23T18:51:37Z',
      name: '20210623_145059.mp4',
      facts: { durationSeconds: 36.89 },
    };
    for (const zone of ['America/New_York', null]) {
      const found = stamp({ ...said, zone });
      expect(found).toMatchObject({ meaning: 'stop', reason: 'name-plus-duration-is-header' });
      expect(found.startMs).toBeGreaterThanOrEqual(Date.parse('2021-06-23T18:50:59Z'));
      expect(found.startMs).toBeLessThanOrEqual(Date.parse('2021-06-23T18:51:01Z'));
    }
  });

  test('exiftool-vendored.js #113: PXL names are UTC, the header 28.856 s later [length taken as that]', () => {
    const found = stamp({
      created: '2022-08-31T00:32:06Z',
      name: 'PXL_20220831_003137144.mp4',
      facts: { durationSeconds: 28.9 },
    });
    expect(found).toMatchObject({ meaning: 'stop', reason: 'name-plus-duration-is-header' });
    expect(Math.abs((found.startMs ?? 0) - Date.parse('2022-08-31T00:31:37.144Z'))).toBeLessThan(1000);
  });

  test('Simple-Gallery #3091: with the key com.android.version and no name, creation = modification is the stop', () => {
    expect(stamp({ created: '2026-03-02T14:05:06Z', android: true })).toMatchObject({ meaning: 'stop' });
  });
});

describe('iPhones write the start (one published sample; film a clip on the school’s own tablets to be sure)', () => {
  const iphone = { container: 'quicktime', durationSeconds: 22 } as const;

  test('sortphotos #157: IMG_0250.MOV, created 22:31:01 UTC, modified 22:31:23, key 18:31:01-04:00', () => {
    const header: Said = {
      created: '2023-07-30T22:31:01Z',
      modified: '2023-07-30T22:31:23Z',
      name: 'IMG_0250.MOV',
      facts: iphone,
    };
    expect(stamp(header)).toMatchObject({ meaning: 'start', reason: 'modified-after-duration' });
    const withKey = stamp({
      ...header,
      facts: {
        ...iphone,
        modifiedMs: Date.parse('2023-07-30T22:31:23Z'),
        dates: [
          date('movie-header', '2023-07-30T22:31:01Z'),
          date('recording-key', '2023-07-30T18:31:01-04:00'),
        ],
      },
    });
    expect(withKey).toMatchObject({ source: 'recording-key', meaning: 'start', trust: 'firm', problems: [] });
    expect(iso(withKey.startMs)).toBe('2023-07-30T22:31:01Z');
  });

  test.each([
    ['IMG_6889.MOV', 28.6, 5],
    ['IMG_6886_nogps.MOV', 5.48, 0],
  ])(
    'photoprism #727: %s, %d s long, modified %i s after creation, cannot be told',
    (name, durationSeconds, gap) => {
      const created = '2020-12-28T12:00:00Z';
      const modified = new Date(Date.parse(created) + gap * 1000).toISOString();
      const found = stamp({ created, modified, name, facts: { container: 'quicktime', durationSeconds } });
      expect(found.meaning).toBe('unknown');
      expect(found.uncertaintySeconds).toBeGreaterThanOrEqual(durationSeconds);
    },
  );
});

describe('dates that are none', () => {
  test('memories #1343: the zero date of received messages', () => {
    expect(stamp({ created: '1904-01-01T00:00:00Z' }).source).toBe('none');
  });

  test('NXGallery #2: 1970-01-01 as a console stores it', () => {
    expect(stamp({ created: '1970-01-01T00:00:00Z' }).source).toBe('none');
  });

  test('immich-go #732: 1942 from an unknown reader', () => {
    expect(stamp({ created: '1942-06-01T00:00:00Z' }).source).toBe('none');
  });

  test('immich #14949: the file system says 2097, the header 2018: the header counts', () => {
    const found = stamp({ created: '2018-05-05T10:00:00Z', fileTime: '2097-01-01T00:00:00Z' });
    expect(found).toMatchObject({ source: 'movie-header', problems: [] });
  });

  test('Piwigo-Mobile #570, YPImagePicker #212: sharing changes the file’s date and not the container’s', () => {
    const found = stamp({ created: '2024-02-06T15:12:51Z', fileTime: '2024-03-01T08:00:00Z' });
    expect(iso(found.startMs)).toBe('2024-02-06T15:12:51Z');
    expect(found.problems).toEqual([]);
  });

  test('lespas #162: VID-20240203-WA0001.mp4 has a day and no time: it cannot be ordered', () => {
    const found = stamp({ name: 'VID-20240203-WA0001.mp4', fileTime: '2024-02-03T19:00:00Z' });
    expect(found).toMatchObject({
      source: 'file-name',
      reason: 'name-date-only',
      startMs: null,
      trust: 'none',
    });
    expect(found.problems).toEqual([{ code: 'stamp-date-without-time', date: '2024-02-03' }]);
  });

  test('docbank pull 253: "missing, sentinel, and unrepresentable values stay absent"', () => {
    expect(
      stamp({ facts: { dates: [{ ...date('movie-header', 'full'), raw: '18446744073709551615' }] } }).source,
    ).toBe('none');
  });
});

describe('names against headers', () => {
  test('Piwigo-Mobile #570: RPReplay_Final1707232371 and creation_time 2024-02-06T15:12:51 are the same instant', () => {
    const found = stamp({ created: '2024-02-06T15:12:51Z', name: 'RPReplay_Final1707232371.MP4' });
    expect(found).toMatchObject({ meaning: 'unknown', problems: [] });
    expect(found.readMs).toBe(1_707_232_371_000);
  });

  test('memories #1256, piwigo-videojs #98: a camera’s local time in the UTC field is found out by its name only', () => {
    const local: Said = { created: '2026-03-02T09:05:06Z', zone: 'America/New_York' };
    const named = stamp({ ...local, name: '20260302_090506.mp4' });
    expect(named.reason).toBe('header-local-by-custom');
    expect(iso(named.startMs)).toBe('2026-03-02T14:05:06Z');
    expect(iso(stamp(local).startMs)).toBe('2026-03-02T09:05:06Z');
  });

  test('Lychee #675: MP4 is taken as UTC, MOV without other evidence is marked', () => {
    const created = '2026-03-02T14:05:06Z';
    expect(stamp({ created }).problems).toEqual([]);
    expect(stamp({ created, facts: { container: 'quicktime' } }).problems).toEqual([
      { code: 'stamp-zone-unknown', source: 'movie-header' },
    ]);
  });
});
