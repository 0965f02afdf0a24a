import { describe, expect, test } from 'vitest';
import { boundBytes, READING_LIMITS } from '../../../src-core/media/bounded-bytes.ts';
import { sourceOf, sparseSource } from './build-boxes.ts';

const numbered = Uint8Array.from({ length: 300_000 }, (_, index) => index % 251);

describe('reading through a window', () => {
  test('gives the very bytes of the file, wherever one asks', async () => {
    const bytes = boundBytes(sourceOf(numbered));
    for (const at of [0, 5, 4090, 4096, 299_990, 17, 100_000, 100_008, 299_999]) {
      expect(await bytes.read(at, 12)).toEqual(numbered.subarray(at, at + 12));
    }
  });

  test('asks the source once for many neighbours, and for more the longer they go on', async () => {
    const source = sourceOf(numbered);
    const bytes = boundBytes(source);
    for (let at = 0; at < 60_000; at += 8) await bytes.read(at, 8);
    expect(source.asked.reads).toBeLessThanOrEqual(5);
  });

  test('gives less at the end and nothing beyond it or before the beginning', async () => {
    const bytes = boundBytes(sourceOf(numbered));
    expect((await bytes.read(299_998, 10)).length).toBe(2);
    expect((await bytes.read(300_000, 10)).length).toBe(0);
    expect((await bytes.read(-5, 10)).length).toBe(0);
    expect((await bytes.read(Number.NaN, 10)).length).toBe(0);
  });

  test('gives nothing where the file shrank while it was read', async () => {
    const source = { size: 1000, read: async () => new Uint8Array(0) };
    expect((await boundBytes(source).read(0, 10)).length).toBe(0);
  });
});

describe('the limits', () => {
  test('end the reads', async () => {
    const source = sparseSource(10 ** 12, []);
    const bytes = boundBytes(source);
    for (let index = 0; index < 5000; index += 1) await bytes.read(index * 1_000_000, 8);
    expect(source.asked.reads).toBe(READING_LIMITS.reads);
    expect(bytes.isSpent()).toBe(true);
    expect((await bytes.read(77, 8)).length).toBe(0);
  });

  test('end the bytes, and no single read is larger than a piece', async () => {
    const source = sparseSource(10 ** 12, []);
    const bytes = boundBytes(source);
    for (let index = 0; index < 500; index += 1) await bytes.read(index * 10_000_000, 10_000_000);
    expect(source.asked.bytes).toBe(READING_LIMITS.totalBytes);
    expect(source.asked.largest).toBe(READING_LIMITS.pieceBytes);
  });

  test('end the steps, though all of them are answered from the window', async () => {
    const source = sourceOf(numbered);
    const bytes = boundBytes(source);
    for (let index = 0; index < READING_LIMITS.steps; index += 1) await bytes.read(0, 8);
    expect((await bytes.read(0, 8)).length).toBe(0);
    expect(source.asked.reads).toBe(1);
  });
});
