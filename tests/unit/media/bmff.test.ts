import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import {
  box,
  ftyp,
  join,
  largeBox,
  movie,
  mvhd,
  sourceOf,
  sparseSource,
  trak,
  u32,
  u64,
  utf8,
  zeros,
} from './build-boxes.ts';
import { getFacts, getProblems, showDate } from './read-facts.ts';

const MARCH = 3_855_305_106;
const MARCH_TEXT = '2026-03-02T14:05:06Z';

describe('the movie header', () => {
  test('gives the same instant and length in 32 and in 64 bits', async () => {
    const short = await getFacts(movie({ created: MARCH, version: 0 }));
    const long = await getFacts(movie({ created: MARCH, version: 1 }));
    expect(showDate(short, 'movie-header')).toBe(MARCH_TEXT);
    expect(showDate(long, 'movie-header')).toBe(MARCH_TEXT);
    expect([short.durationSeconds, long.durationSeconds]).toEqual([12, 12]);
  });

  test('is 108 bytes in version 0 and 120 in version 1, as ISO/IEC 14496-12 §8.2.2 lays it out', () => {
    expect(mvhd({ version: 0 }).length).toBe(108);
    expect(mvhd({ version: 1 }).length).toBe(120);
  });

  test.each([2, 3, 255])('in version %i is said to be unsupported, and the rest is read', async (version) => {
    const bytes = movie({ created: MARCH });
    bytes[Buffer.from(bytes).indexOf('mvhd') + 4] = version;
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome.problems).toContainEqual({ code: 'media-version-unsupported', part: 'mvhd', version });
    expect(outcome.ok && showDate(outcome.value, 'media-header')).toBe(MARCH_TEXT);
  });

  test('keeps the modification instant beside the creation, and none where it is zero', async () => {
    const facts = await getFacts(movie({ created: MARCH, modified: MARCH + 22 }));
    expect(facts.modifiedMs).toBe(Date.parse(MARCH_TEXT) + 22_000);
    expect((await getFacts(movie({ created: MARCH, modified: 0 }))).modifiedMs).toBeNull();
  });

  test('beyond any calendar names no instant, and its number is kept for the message', async () => {
    const facts = await getFacts(movie({ version: 1, created: 0xffff_ffff_ffff_ffffn }));
    expect(facts.dates[0]).toMatchObject({ raw: '18446744073709551615', instantMs: null });
  });

  test('too short for its version is a malformed part', async () => {
    const bytes = join(ftyp('isom'), box('moov', box('mvhd', zeros(8)), trak()), box('mdat'));
    expect(await getProblems(bytes)).toContainEqual({ code: 'media-malformed', at: 28, part: 'mvhd' });
  });
});

describe('where the movie box lies', () => {
  const moov = box('moov', mvhd({ created: MARCH, duration: 12_000 }), trak({ created: MARCH }));

  test('at the end of the file, after five gigabytes of pictures, costs two small reads', async () => {
    const pictures = 5 * 1024 ** 3;
    const head = join(ftyp('isom'), u32(1), 'mdat', u64(pictures));
    const end = ftyp('isom').length + pictures;
    const source = sparseSource(end + moov.length, [
      { at: 0, bytes: head },
      { at: end, bytes: moov },
    ]);
    const outcome = await readMedia(source);
    expect(outcome.ok && showDate(outcome.value, 'movie-header')).toBe(MARCH_TEXT);
    expect(outcome.problems).toEqual([]);
    expect(source.asked.reads).toBeLessThanOrEqual(2);
    expect(source.asked.bytes).toBeLessThan(20_000);
  });

  test('may be written with a 64-bit size', async () => {
    const inside = [mvhd({ created: MARCH }), trak()];
    const facts = await getFacts(join(ftyp('isom'), largeBox('moov', inside), box('mdat')));
    expect(showDate(facts, 'movie-header')).toBe(MARCH_TEXT);
  });

  test('may be the last box, of size 0: to the end of the file', async () => {
    const bytes = join(ftyp('isom'), box('mdat', zeros(16)), u32(0), moov.subarray(4));
    expect(showDate(await getFacts(bytes), 'movie-header')).toBe(MARCH_TEXT);
  });

  test('in a file without ftyp: QuickTime', async () => {
    const facts = await getFacts(join(box('wide'), box('mdat', zeros(8)), moov));
    expect(facts.container).toBe('quicktime');
    expect(showDate(facts, 'movie-header')).toBe(MARCH_TEXT);
  });
});

describe('files that are not whole', () => {
  test('no bytes at all', async () => {
    expect(await readMedia(sourceOf(zeros(0)))).toEqual({ ok: false, problems: [{ code: 'media-empty' }] });
  });

  test('a text file', async () => {
    const outcome = await readMedia(sourceOf(utf8('Dear coach, we lost the tablet. Squad Teal')));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'media-unknown-kind' }] });
  });

  test('zeros from end to end, as a failed copy leaves', async () => {
    expect((await readMedia(sourceOf(zeros(4096)))).ok).toBe(false);
  });

  test('cut within the pictures, the movie box in front: dates are read, and what is missing is counted', async () => {
    const whole = movie({ created: MARCH });
    const outcome = await readMedia(sourceOf(whole.subarray(0, whole.length - 24)));
    expect(outcome.ok && showDate(outcome.value, 'movie-header')).toBe(MARCH_TEXT);
    expect(outcome.problems).toEqual([{ code: 'media-cut-short', missingBytes: 24 }]);
  });

  test('cut before the movie box: nothing usable', async () => {
    const bytes = join(ftyp('isom'), u32(5000), 'mdat', zeros(100));
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'media-cut-short', missingBytes: 4892 }] });
  });

  test('cut within the movie box: what comes before the cut is read', async () => {
    const whole = join(ftyp('isom'), box('mdat', zeros(8)), box('moov', mvhd({ created: MARCH }), trak()));
    const outcome = await readMedia(sourceOf(whole.subarray(0, whole.length - 40)));
    expect(outcome.ok && showDate(outcome.value, 'movie-header')).toBe(MARCH_TEXT);
    expect(outcome.problems[0]).toEqual({ code: 'media-cut-short', missingBytes: 40 });
  });

  test('never closed by the recorder: pictures, but no movie box', async () => {
    const outcome = await readMedia(sourceOf(join(ftyp('isom'), box('mdat', zeros(500)))));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'media-no-index' }] });
  });

  test('sound alone is told apart from video', async () => {
    const bytes = join(
      ftyp('M4A '),
      box('moov', mvhd({ created: MARCH }), trak({ handler: 'soun', codec: 'mp4a' })),
    );
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome.problems).toEqual([{ code: 'media-no-picture' }]);
    expect(outcome.ok && outcome.value.holds).toBe('sound');
  });
});
