import { describe, expect, test } from 'vitest';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { join, sourceOf, utf8, zeros } from './build-boxes.ts';
import { avi, chunk, list } from './build-chunks.ts';
import { getFacts, getProblems, showDate } from './read-facts.ts';

describe('an AVI file', () => {
  test('gives length, codec and the camera date of IDIT as a local time', async () => {
    const facts = await getFacts(avi(chunk('IDIT', 'Mon Mar 02 09:05:06 2026\n\0')));
    expect(facts).toMatchObject({ container: 'avi', durationSeconds: 12, codec: 'MJPG', holds: 'video' });
    expect(showDate(facts, 'riff-date')).toBe('2026-03-02T09:05:06');
  });

  test('pads its days with spaces, as asctime does', async () => {
    const facts = await getFacts(avi(chunk('IDIT', 'SUN NOV  1 01:30:00 2026')));
    expect(showDate(facts, 'riff-date')).toBe('2026-11-01T01:30:00');
  });

  test('gives the date and the software of its INFO list', async () => {
    const facts = await getFacts(
      avi(list('INFO', chunk('ICRD', '2026-03-02 09:05:06'), chunk('ISFT', 'Harbour 1'))),
    );
    expect(showDate(facts, 'riff-date')).toBe('2026-03-02T09:05:06');
    expect(facts.recorder.software).toBe('Harbour 1');
  });

  test('a day alone in ICRD names no time', async () => {
    const facts = await getFacts(avi(list('INFO', chunk('ICRD', '2026-03-02'))));
    expect(facts.dates[0]).toMatchObject({ raw: '2026-03-02', instantMs: null, local: null });
  });

  test('a month that is none names no time', async () => {
    const facts = await getFacts(avi(chunk('IDIT', 'Mon Foo 02 09:05:06 2026')));
    expect(facts.dates[0]).toMatchObject({ instantMs: null, local: null });
  });

  test('cut short: read, and what is missing is counted', async () => {
    const whole = avi(chunk('IDIT', 'Mon Mar 02 09:05:06 2026'));
    const outcome = await readMedia(sourceOf(whole.subarray(0, whole.length - 30)));
    expect(outcome.problems).toEqual([{ code: 'media-cut-short', missingBytes: 30 }]);
    expect(outcome.ok && outcome.value.dates).toHaveLength(1);
  });

  test('without a header list gives nothing', async () => {
    const outcome = await readMedia(sourceOf(chunk('RIFF', 'AVI ', list('movi', zeros(64)))));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'media-no-index' }] });
  });

  test('other RIFF files (sound, say) are no clips', async () => {
    expect(await getProblems(chunk('RIFF', 'WAVE', chunk('fmt ', zeros(16))))).toEqual([
      { code: 'media-unknown-kind' },
    ]);
  });

  test('lists in lists are opened four deep and no deeper', async () => {
    let inner = chunk('IDIT', 'Mon Mar 02 09:05:06 2026');
    for (let depth = 0; depth < 500; depth += 1) inner = list('strl', inner);
    expect((await getFacts(avi(inner))).dates).toEqual([]);
  });
});

test('a file of eight bytes or fewer is of no kind', async () => {
  expect(await getProblems(utf8('RIFF'))).toEqual([{ code: 'media-unknown-kind' }]);
  expect(await getProblems(join('RIFF', zeros(4)))).toEqual([{ code: 'media-unknown-kind' }]);
});
