import { describe, expect, test } from 'vitest';
import {
  box,
  ftyp,
  hdlr,
  join,
  keysAndValues,
  metaKeys,
  movie,
  mvhd,
  trak,
  u16,
  u32,
  utf8,
  zeros,
} from './build-boxes.ts';
import { getFacts, showDate } from './read-facts.ts';

const MARCH_TEXT = '2026-03-02T14:05:06Z';

describe('dates written as text', () => {
  test.each([
    ['+0200', '2021-06-26T14:14:20+0200'],
    ['+02:00', '2021-06-26T14:14:20+02:00'],
  ])(
    'com.apple.quicktime.creationdate with %s (value: github.com/MediaArea/MediaInfo/issues/586)',
    async (_, text) => {
      const inside = metaKeys({ 'com.apple.quicktime.creationdate': text });
      const facts = await getFacts(movie({ brand: 'qt  ', inside }));
      expect(showDate(facts, 'recording-key')).toBe('2021-06-26T12:14:20Z');
      expect(facts.dates.at(-1)?.offsetMinutes).toBe(120);
    },
  );

  test('keys inside user data, in a meta box with version and flags, are read as well', async () => {
    const values = keysAndValues({ 'com.apple.quicktime.creationdate': '2026-03-02T09:05:06-0500' });
    const meta = box('meta', u32(0), box('hdlr', u32(0), u32(0), 'mdta', zeros(13)), values);
    expect(showDate(await getFacts(movie({ inside: box('udta', meta) })), 'recording-key')).toBe(MARCH_TEXT);
  });

  test('©day in the user data of a MOV', async () => {
    const day = box('©day', u16(24), u16(0x55c4), '2026-03-02T09:05:06-0500');
    const facts = await getFacts(movie({ brand: 'qt  ', inside: box('udta', day, u32(0)) }));
    expect(showDate(facts, 'day-tag')).toBe(MARCH_TEXT);
  });

  test('©day among the items of an MP4', async () => {
    const day = box('©day', box('data', u32(1), u32(0), '2026-03-02T09:05:06-05:00'));
    const meta = box('meta', u32(0), hdlr('mdir'), box('ilst', day));
    expect(showDate(await getFacts(movie({ inside: box('udta', meta) })), 'day-tag')).toBe(MARCH_TEXT);
  });

  test('a year alone is kept as written and names no time', async () => {
    const facts = await getFacts(
      movie({ brand: 'qt  ', inside: box('udta', box('©day', u16(4), u16(0), '2026')) }),
    );
    expect(facts.dates.at(-1)).toEqual({
      field: 'day-tag',
      raw: '2026',
      instantMs: null,
      local: null,
      offsetMinutes: null,
    });
  });

  test.each([
    ['with version, flags and language', join(u32(0), u16(0x55c4), '2016-01-11T17:31:10Z')],
    ['as text alone', utf8('2016-01-11T17:31:10Z')],
  ])('the ISO user-data date %s (form: AVMetadataISOUserDataKeyDate)', async (_, body) => {
    const facts = await getFacts(movie({ inside: box('udta', box('date', body)) }));
    expect(showDate(facts, 'recording-key')).toBe('2016-01-11T17:31:10Z');
  });
});

describe('what recorded it', () => {
  test('Apple keys give make, model and software', async () => {
    const inside = metaKeys({
      'com.apple.quicktime.make': 'Apple',
      'com.apple.quicktime.model': 'iPad (9th generation)',
      'com.apple.quicktime.software': '17.1',
    });
    const { recorder } = await getFacts(movie({ brand: 'qt  ', inside }));
    expect(recorder).toEqual({
      brand: 'qt',
      make: 'Apple',
      model: 'iPad (9th generation)',
      software: '17.1',
      android: false,
    });
  });

  test('the Android version key is noticed, whatever it says', async () => {
    expect(
      (await getFacts(movie({ inside: metaKeys({ 'com.android.version': '13' }) }))).recorder.android,
    ).toBe(true);
    expect((await getFacts(movie())).recorder.android).toBe(false);
  });

  test('the codec is that of the first video track, whichever track comes first', async () => {
    const sound = trak({ id: 2, handler: 'soun', codec: 'mp4a' });
    const bytes = join(ftyp('isom'), box('moov', mvhd({}), sound, trak({ codec: 'hvc1' })), box('mdat'));
    expect((await getFacts(bytes)).codec).toBe('hvc1');
  });
});
