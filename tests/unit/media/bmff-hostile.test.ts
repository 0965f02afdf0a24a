import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { box, ftyp, hdlr, join, movie, mvhd, sourceOf, trak, u32, zeros } from './build-boxes.ts';
import { getFacts, getProblems } from './read-facts.ts';

const MARCH = 3_855_305_106;

describe('sizes and nesting that a hostile file claims', () => {
  test('a box smaller than its own header ends the walk', async () => {
    expect(await getProblems(join(ftyp('isom'), u32(4), 'mdat', zeros(40)))).toEqual([
      { code: 'media-malformed', at: 20, part: 'mdat' },
    ]);
  });

  test('a box larger than its holder is cut there', async () => {
    const broken = join(u32(0x7fff_ffff), 'udta', zeros(8));
    const problems = await getProblems(
      join(ftyp('isom'), box('moov', mvhd({ created: MARCH }), trak(), broken)),
    );
    expect(problems).toEqual([{ code: 'media-malformed', at: expect.any(Number), part: 'udta' }]);
  });

  test('boxes in boxes, ten thousand deep, are not followed', async () => {
    let nested: Uint8Array = zeros(0);
    const header = (size: number) => join(u32(size), 'mdia');
    const headers: Uint8Array[] = [];
    for (let depth = 0; depth < 10_000; depth += 1) headers.push(header(8 * (10_000 - depth)));
    nested = join(...headers);
    const source = sourceOf(join(ftyp('isom'), box('moov', mvhd({ created: MARCH }), box('trak', nested))));
    const outcome = await readMedia(source);
    expect(outcome.ok).toBe(true);
    expect(source.asked.reads).toBeLessThan(20);
  });

  test('a million empty boxes spend the limit, and that is said', async () => {
    const boxes = new Uint8Array(8_000_000);
    for (let at = 0; at < boxes.length; at += 8) boxes.set([0, 0, 0, 8, 0x66, 0x72, 0x65, 0x65], at);
    const source = sourceOf(join(ftyp('isom'), boxes));
    const outcome = await readMedia(source);
    expect(outcome.problems).toContainEqual({ code: 'media-reading-limit' });
    expect(source.asked.bytes).toBeLessThanOrEqual(8 * 1024 * 1024);
  });

  test('a list that claims four thousand million keys reads those that are there', async () => {
    const keys = box('keys', u32(0), u32(0xffff_ffff), box('mdta', 'com.android.version'));
    const meta = box('meta', hdlr('mdta'), keys, box('ilst', join(u32(16), u32(1), zeros(8))));
    expect((await getFacts(movie({ inside: meta }))).recorder.android).toBe(true);
  });
});
