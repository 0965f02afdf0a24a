import { describe, expect, test } from 'vitest';
import { createPacketReader } from '../../../src-core/host/packet-stream.ts';

/** An element: its id as the standards print it, a size of eight bytes (null: unknown), and what is in it. */
function element(id: number, body: readonly number[], size: number | null = body.length): number[] {
  const idBytes = [24, 16, 8, 0].map((shift) => (id >>> shift) & 0xff);
  while (idBytes[0] === 0) idBytes.shift();
  const length =
    size === null ? [1, 255, 255, 255, 255, 255, 255, 255] : [1, 0, 0, 0, 0, 0, size >> 8, size & 255];
  return [...idBytes, ...length, ...body];
}

const track = (number: number, width: number, height: number) =>
  element(0xae, [
    ...element(0xd7, [number]),
    ...element(0x86, [86, 95]),
    ...element(0xe0, [...element(0xb0, [width]), ...element(0xba, [height])]),
  ]);

const block = (number: number, ms: number, bytes: readonly number[]) =>
  element(0xa3, [0x80 | number, (ms >> 8) & 255, ms & 255, 0x80, ...bytes]);

const STREAM = Uint8Array.from([
  ...element(0x1a45dfa3, element(0x4282, [119, 101, 98, 109])),
  ...element(
    0x18538067,
    [
      ...element(0xec, new Array(40).fill(0)),
      ...element(0x1654ae6b, [...track(1, 3, 1), ...track(2, 200, 90)]),
      ...element(0x1f43b675, [
        ...element(0xe7, [0]),
        ...block(1, 0, [1, 2, 3]),
        ...block(2, 0, [255, 216]),
        ...block(1, 67, [4, 5, 6]),
      ]),
      ...element(0x1f43b675, [
        ...element(0xe7, [0x04, 0x0b]),
        ...block(1, -2, [7, 8, 9]),
        ...element(0xa0, element(0xa1, [0x82, 0, 0, 0, 9])),
      ]),
    ],
    null,
  ),
]);

const PACKETS = [
  { stream: 0, width: 3, height: 1, atSeconds: 0, bytes: Uint8Array.of(1, 2, 3) },
  { stream: 1, width: 200, height: 90, atSeconds: 0, bytes: Uint8Array.of(255, 216) },
  { stream: 0, width: 3, height: 1, atSeconds: 0.067, bytes: Uint8Array.of(4, 5, 6) },
  { stream: 0, width: 3, height: 1, atSeconds: 1.033, bytes: Uint8Array.of(7, 8, 9) },
  { stream: 1, width: 200, height: 90, atSeconds: 1.035, bytes: Uint8Array.of(9) },
];

describe('the stream of packets', () => {
  test.each([STREAM.length, 1, 2, 7, 64])('is cut alike in pieces of %i bytes', (piece) => {
    const reader = createPacketReader();
    const packets = [];
    for (let at = 0; at < STREAM.length; at += piece)
      packets.push(...reader.push(STREAM.subarray(at, at + piece)));
    expect(packets).toEqual(PACKETS);
  });

  test('that ends early gives the packets that are whole', () => {
    expect(createPacketReader().push(STREAM.subarray(0, STREAM.length - 1))).toEqual(PACKETS.slice(0, -1));
  });

  test('of something else is refused instead of read', () => {
    const text = new TextEncoder().encode('This is no stream of packets at all, whatever it is.');
    expect(() => createPacketReader().push(text)).toThrow('out of step');
  });
});
