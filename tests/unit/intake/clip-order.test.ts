import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type OrderedBy, orderClips } from '../../../src-core/intake/clip-order.ts';

const clip = (id: string, startMs: number | null, value: number | null, series = 'IMG_'): OrderedBy => ({
  id,
  name: `${series}${String(value ?? id)}.MOV`,
  startMs,
  number: value === null ? null : { series, value },
});
const ids = (clips: readonly OrderedBy[]) => orderClips(clips).map(({ id }) => id);

describe('the order of one tablet’s clips', () => {
  test('goes by date where there are dates, whatever the numbers say', () => {
    expect(ids([clip('late', 200, 1), clip('early', 100, 9)])).toEqual(['early', 'late']);
  });

  test('gives an undated clip the place its number has', () => {
    const order = orderClips([clip('a', 100, 11), clip('c', 300, 13), clip('b', null, 12)]);
    expect(order).toEqual([
      { id: 'a', by: 'date' },
      { id: 'b', by: 'number' },
      { id: 'c', by: 'date' },
    ]);
  });

  test('puts an undated clip with the lowest number first', () => {
    expect(ids([clip('b', 100, 12), clip('a', null, 11)])).toEqual(['a', 'b']);
  });

  // Wrap-around: DCF file numbers run 0001 to 9999 (JEITA CP-3461); after 9999 the next is 0001 (from memory).
  test('follows the counter over 9999', () => {
    const wrapped = [clip('w', null, 9998), clip('x', null, 9999), clip('y', null, 1), clip('z', null, 2)];
    expect(ids(wrapped)).toEqual(['w', 'x', 'y', 'z']);
    expect(ids([clip('w', 10, 9998), clip('z', 40, 2), clip('y', null, 1)])).toEqual(['w', 'y', 'z']);
  });

  test('has no place for a clip with neither date nor number, nor for a number of a series nobody else has', () => {
    const order = orderClips([clip('a', 100, 11), clip('q', null, null), clip('r', null, 5, 'MVI_')]);
    expect(order.filter(({ by }) => by === 'none').map(({ id }) => id)).toEqual(['q', 'r']);
  });

  test('lists every clip exactly once, and hiding some dates never reorders the dated', () => {
    const tablets = fc.uniqueArray(
      fc.record({ value: fc.integer({ min: 1, max: 9999 }), dated: fc.boolean() }),
      {
        selector: ({ value }) => value,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(tablets, (records) => {
        const clips = records.map(({ value, dated }, at) =>
          clip(String(at), dated ? at * 1000 : null, value),
        );
        const order = orderClips(clips);
        expect(order.map(({ id }) => id).sort()).toEqual(clips.map(({ id }) => id).sort());
        const dated = order.filter(({ by }) => by === 'date').map(({ id }) => Number(id));
        expect(dated).toEqual([...dated].sort((a, b) => a - b));
      }),
    );
  });
});
