import { describe, expect, test } from 'vitest';
import { readByteRange } from '../../../../src-core/host/media/byte-range.ts';

const read = (header: string | null, size = 1000, longest = 1e9) => readByteRange(header, size, longest);

describe('a Range header (RFC 9110, 14.1.2 and 14.2)', () => {
  test.each([
    ['bytes=0-499', 0, 499],
    ['bytes=500-999', 500, 999],
    ['bytes=-500', 500, 999],
    ['bytes=500-', 500, 999],
    ['bytes=0-0', 0, 0],
    ['bytes=999-', 999, 999],
    ['bytes=0-5000', 0, 999],
    ['bytes=-5000', 0, 999],
  ])('“%s” of 1000 bytes is bytes %i to %i', (header, from, to) => {
    expect(read(header)).toEqual({ kind: 'part', from, to });
  });

  test.each(['bytes=1000-', 'bytes=5000-6000', 'bytes=-0'])('“%s” lies outside 1000 bytes', (header) => {
    expect(read(header)).toEqual({ kind: 'outside' });
  });

  test.each([
    null,
    '',
    'bytes=',
    'bytes=-',
    'bytes=9-3',
    'bytes=a-b',
    'bytes=0-1,5-6',
    'items=0-1',
    'bytes=-1-2',
    'bytes=1.5-2',
    'bytes=0x0-0x9',
    `bytes=${'9'.repeat(400)}-`,
    'bytes=0-1\r\nx: y',
  ])('%j is passed over, as the RFC allows', (header) => {
    expect(read(header)).toEqual({ kind: 'whole' });
  });

  test('gets no more than the longest part, whatever was asked', () => {
    expect(readByteRange('bytes=100-', 1000, 50)).toEqual({ kind: 'part', from: 100, to: 149 });
    expect(readByteRange('bytes=100-120', 1000, 50)).toEqual({ kind: 'part', from: 100, to: 120 });
  });

  test('of an empty file has nothing to give', () => {
    expect(read('bytes=0-', 0)).toEqual({ kind: 'outside' });
  });
});
