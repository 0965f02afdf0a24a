import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { join, sourceOf, u32, zeros } from './build-boxes.ts';
import { heic, jpeg, tiff } from './build-exif.ts';
import { getFacts, getProblems, showDate } from './read-facts.ts';

const MAKE = { 271: 'Harbour', 272: 'Slate 7' };
const TAKEN = { 36867: '2026:03:02 09:05:06' };
const OFFSET = { 36881: '-05:00' };

function png(block: Uint8Array): Uint8Array {
  const part = (type: string, body: Uint8Array) => join(u32(body.length), type, body, u32(0));
  const header = part('IHDR', join(u32(1), u32(1), Uint8Array.of(8, 0, 0, 0, 0)));
  const pixels = part('IDAT', deflateSync(zeros(2)));
  return join(
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    header,
    part('eXIf', block),
    pixels,
    part('IEND', zeros(0)),
  );
}

describe.each([
  ['jpeg', jpeg],
  ['heic', heic],
  ['png', png],
] as const)('a still of the kind %s', (kind, wrap) => {
  test('with an offset names the instant', async () => {
    const facts = await getFacts(wrap(tiff(MAKE, { ...TAKEN, ...OFFSET })));
    expect(facts).toMatchObject({ container: kind, holds: 'still', durationSeconds: null, codec: null });
    expect(showDate(facts, 'exif-original')).toBe('2026-03-02T14:05:06Z');
    expect(facts.recorder).toMatchObject({ make: 'Harbour', model: 'Slate 7' });
  });

  test('without an offset names a local time and no instant', async () => {
    const facts = await getFacts(wrap(tiff(MAKE, TAKEN)));
    expect(facts.dates).toEqual([
      {
        field: 'exif-original',
        raw: '2026:03:02 09:05:06',
        instantMs: null,
        local: '2026-03-02T09:05:06',
        offsetMinutes: null,
      },
    ]);
  });
});

describe('stills that say less', () => {
  test('a picture without EXIF has no dates and no problem', async () => {
    const bytes = join(
      Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0),
      Uint8Array.of(0xff, 0xd9),
      zeros(100),
    );
    const outcome = await readMedia(sourceOf(bytes));
    expect(outcome).toMatchObject({ ok: true, problems: [], value: { dates: [] } });
  });

  test('the date of a clock that was never set is no time', async () => {
    const facts = await getFacts(jpeg(tiff(MAKE, { 36867: '0000:00:00 00:00:00' })));
    expect(facts.dates[0]).toMatchObject({ instantMs: null, local: null });
  });

  test('an offset that is none leaves the time local', async () => {
    const facts = await getFacts(jpeg(tiff(MAKE, { ...TAKEN, 36881: '   :  ' })));
    expect(facts.dates[0]).toMatchObject({ instantMs: null, local: '2026-03-02T09:05:06' });
  });

  test('a signature and nothing else was cut short', async () => {
    const outcome = await readMedia(sourceOf(jpeg(tiff(MAKE, TAKEN)).subarray(0, 20)));
    expect(outcome.ok).toBe(false);
    expect(outcome.problems).toContainEqual({ code: 'media-cut-short', missingBytes: null });
  });

  test('a block of EXIF that contradicts itself is a problem, not an exception', async () => {
    const block = tiff(MAKE, TAKEN);
    block.fill(0xff, 4, 8);
    expect(await getProblems(jpeg(block))).toEqual([{ code: 'media-malformed', at: 0, part: 'EXIF' }]);
  });

  test('of a large picture only the head is read', async () => {
    const source = sourceOf(join(jpeg(tiff(MAKE, TAKEN)), zeros(20_000_000)));
    expect((await readMedia(source)).ok).toBe(true);
    expect(source.asked.bytes).toBeLessThanOrEqual(300_000);
  });
});
