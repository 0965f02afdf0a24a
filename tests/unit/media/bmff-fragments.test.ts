import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { box, ftyp, join, mvhd, sourceOf, trak, u16, u32, zeros } from './build-boxes.ts';
import { getFacts } from './read-facts.ts';

const MARCH = 3_855_305_106;

describe('how long it is, in fragments', () => {
  const extend = (...inside: Uint8Array[]) =>
    join(
      ftyp('iso5'),
      box(
        'moov',
        mvhd({ created: MARCH }),
        trak({ timescale: 12_800 }),
        box('mvex', box('trex', u32(0), u32(1), u32(1), u32(512), u32(0), u32(0)), ...inside),
      ),
    );
  const fragment = (start: number, run: Uint8Array, header = box('tfhd', u32(0), u32(1))) =>
    join(
      box('moof', box('mfhd', u32(0), u32(1)), box('traf', header, box('tfdt', u32(0), u32(start)), run)),
      box('mdat', zeros(32)),
    );
  const defaultRun = (samples: number) => box('trun', u32(0), u32(samples));

  test('as mehd says', async () => {
    const bytes = extend(box('mehd', u32(0), u32(15_500)));
    expect((await getFacts(bytes)).durationSeconds).toBe(15.5);
  });

  test('as the last fragment ends, with the default sample length of trex', async () => {
    const bytes = join(extend(), fragment(0, defaultRun(25)), fragment(25 * 512, defaultRun(50)));
    expect((await getFacts(bytes)).durationSeconds).toBe(3);
  });

  test('with a sample length of the fragment itself', async () => {
    const header = box('tfhd', u32(0x8), u32(1), u32(1024));
    expect((await getFacts(join(extend(), fragment(0, defaultRun(25), header)))).durationSeconds).toBe(2);
  });

  test('with a length for every sample', async () => {
    const run = box(
      'trun',
      u32(0x301),
      u32(3),
      u32(0),
      u32(6400),
      u32(9),
      u32(6400),
      u32(9),
      u32(12_800),
      u32(9),
    );
    expect((await getFacts(join(extend(), fragment(0, run)))).durationSeconds).toBe(2);
  });

  test('added up where no fragment says when it begins', async () => {
    const part = join(box('moof', box('traf', box('tfhd', u32(0), u32(1)), defaultRun(25))), box('mdat'));
    expect((await getFacts(join(extend(), part, part, part))).durationSeconds).toBe(3);
  });

  test('as the segment index adds up, references to further indexes left out', async () => {
    const row = (type: number, units: number) => [u32(type * 0x8000_0000 + 100), u32(units), u32(0)];
    const sidx = box(
      'sidx',
      [u32(0), u32(1), u32(1000), u32(0), u32(0), u16(0), u16(3)],
      [row(0, 4000), row(0, 4500), row(1, 60_000)],
    );
    expect((await getFacts(join(extend(), sidx))).durationSeconds).toBe(8.5);
  });

  test('unknown where nothing says so: no length, no problem', async () => {
    const outcome = await readMedia(sourceOf(extend()));
    expect(outcome.ok && outcome.value.durationSeconds).toBeNull();
    expect(outcome.problems).toEqual([]);
  });

  test('all ones in the header means unknown, and the track is asked', async () => {
    const bytes = join(
      ftyp('isom'),
      box('moov', mvhd({ duration: 0xffff_ffff }), trak({ timescale: 600, duration: 1500 })),
    );
    expect((await getFacts(bytes)).durationSeconds).toBe(2.5);
  });
});
