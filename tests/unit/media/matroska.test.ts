import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { join, sourceOf, u32, zeros } from './build-boxes.ts';
import {
  dateUtc,
  ebmlHeader,
  element,
  id,
  info,
  segment,
  tags,
  tracks,
  unknownSizeElement,
} from './build-elements.ts';
import { getFacts, getProblems, showDate } from './read-facts.ts';

const MARCH = 794_153_106_000_000_000n;
const MARCH_TEXT = '2026-03-02T14:05:06Z';
const cluster = (bytes = 200) => element(0x1f43b675, zeros(bytes));

describe('the segment', () => {
  test('gives DateUTC, length, codec and writing application', async () => {
    const app = element(0x5741, 'Harbour Recorder 2');
    const bytes = join(ebmlHeader(), segment(info(dateUtc(MARCH), app), tracks('V_VP9'), cluster()));
    const facts = await getFacts(bytes);
    expect(facts.container).toBe('matroska');
    expect(showDate(facts, 'segment-date')).toBe(MARCH_TEXT);
    expect(facts.durationSeconds).toBe(12);
    expect(facts.codec).toBe('V_VP9');
    expect(facts.recorder.software).toBe('Harbour Recorder 2');
  });

  test('is WebM where the header says so', async () => {
    const facts = await getFacts(join(ebmlHeader('webm'), segment(info(), tracks())));
    expect(facts.container).toBe('webm');
  });

  test('counts in the scale it names: half a millisecond a unit', async () => {
    const scale = element(0x2ad7b1, u32(500_000));
    const facts = await getFacts(join(ebmlHeader(), segment(info(scale), tracks())));
    expect(facts.durationSeconds).toBe(6);
  });

  test('of unknown size with pictures of unknown size, as browsers record, is read up to them', async () => {
    const pictures = unknownSizeElement(0x1f43b675, zeros(400));
    const bytes = join(
      ebmlHeader('webm'),
      unknownSizeElement(0x18538067, info(dateUtc(MARCH)), tracks(), pictures),
    );
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome.problems).toEqual([]);
    expect(outcome.ok && showDate(outcome.value, 'segment-date')).toBe(MARCH_TEXT);
  });

  test('that reaches beyond the file was cut short', async () => {
    const whole = join(ebmlHeader(), segment(info(dateUtc(MARCH)), tracks(), cluster()));
    const outcome = await readMedia(sourceOf(whole.subarray(0, whole.length - 50)));
    expect(outcome.problems).toEqual([{ code: 'media-cut-short', missingBytes: 50 }]);
    expect(outcome.ok && showDate(outcome.value, 'segment-date')).toBe(MARCH_TEXT);
  });

  test('without a description gives nothing', async () => {
    const outcome = await readMedia(sourceOf(join(ebmlHeader(), segment(cluster()))));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'media-no-index' }] });
  });

  test('with sound alone has no picture', async () => {
    const bytes = join(ebmlHeader(), segment(info(), tracks('A_OPUS', 2)));
    expect(await getProblems(bytes)).toEqual([{ code: 'media-no-picture' }]);
  });
});

describe('DateUTC — RFC 8794 §7.6', () => {
  test('without bytes is the epoch itself, 2001-01-01', async () => {
    const facts = await getFacts(join(ebmlHeader(), segment(info(element(0x4461)), tracks())));
    expect(showDate(facts, 'segment-date')).toBe('2001-01-01T00:00:00Z');
  });

  test.each([1, 4, 7, 9])('of %i bytes is malformed', async (length) => {
    const bytes = join(ebmlHeader(), segment(info(element(0x4461, zeros(length))), tracks()));
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome.problems).toEqual([{ code: 'media-malformed', at: expect.any(Number), part: 'DateUTC' }]);
    expect(outcome.ok && outcome.value.dates).toEqual([]);
  });
});

describe('tags', () => {
  const withTags = (values: Readonly<Record<string, string>>) =>
    getFacts(join(ebmlHeader(), segment(info(), tracks(), tags(values), cluster())));

  test('DATE_RECORDED is UTC — draft-ietf-cellar-tags, "Date Tags Formatting"', async () => {
    const facts = await withTags({ DATE_RECORDED: '2026-03-02 14:05:06.250' });
    expect(showDate(facts, 'recorded-tag')).toBe('2026-03-02T14:05:06.250Z');
  });

  test('DATE_RECORDED of a day or a year alone names no time', async () => {
    expect((await withTags({ DATE_RECORDED: '2026-03-02' })).dates[0]?.instantMs).toBeNull();
    expect((await withTags({ DATE_RECORDED: '2026' })).dates[0]?.instantMs).toBeNull();
  });

  test('keys carried over from a phone keep their meaning', async () => {
    const facts = await withTags({
      'COM.APPLE.QUICKTIME.CREATIONDATE': '2026-03-02T09:05:06-0500',
      'COM.ANDROID.VERSION': '13',
    });
    expect(showDate(facts, 'recording-key')).toBe(MARCH_TEXT);
    expect(facts.recorder.android).toBe(true);
  });

  test('behind the pictures are found through the seek head, without walking the pictures', async () => {
    const seek = (target: number, position: number) =>
      element(0x114d9b74, element(0x4dbb, element(0x53ab, id(target)), element(0x53ac, u32(position))));
    const parts = [info(), tracks(), ...Array.from({ length: 300 }, () => cluster(5000))];
    const distance = seek(0x1254c367, 0).length + join(...parts).length;
    const last = tags({ DATE_RECORDED: '2026-03-02 14:05:06' });
    const source = sourceOf(join(ebmlHeader(), segment(seek(0x1254c367, distance), parts, last)));
    const outcome = await readMedia(source);
    expect(outcome.ok && showDate(outcome.value, 'recorded-tag')).toBe(MARCH_TEXT);
    expect(source.asked.reads).toBeLessThanOrEqual(3);
  });

  test('behind the pictures are found without a seek head too', async () => {
    const last = tags({ DATE_RECORDED: '2026-03-02 14:05:06' });
    const bytes = join(ebmlHeader(), segment(info(), tracks(), cluster(), cluster(), last));
    expect(showDate(await getFacts(bytes), 'recorded-tag')).toBe(MARCH_TEXT);
  });

  test('a seek head that points nowhere is not followed', async () => {
    const seek = element(
      0x114d9b74,
      element(0x4dbb, element(0x53ab, id(0x1254c367)), element(0x53ac, zeros(8).fill(0xff))),
    );
    const outcome = await readMedia(sourceOf(join(ebmlHeader(), segment(seek, info(), tracks(), cluster()))));
    expect(outcome.ok).toBe(true);
  });
});
