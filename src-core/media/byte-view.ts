/** Reads numbers and letters out of a few bytes, big-endian unless named otherwise; nothing beyond the end. */
export interface ByteView {
  /** Bytes there are. */
  readonly length: number;
  /** Unsigned, 8 to 32 bits; zero beyond the end, so that callers check `length` first. */
  u8(at: number): number;
  u16(at: number): number;
  u32(at: number): number;
  u32LittleEndian(at: number): number;
  /** Unsigned 64 bits, exact. */
  u64(at: number): bigint;
  /** Four letters as written, each byte one letter (Latin-1, so that © is A9). */
  letters(at: number): string;
  /** The bytes from `from` to `to`, fewer at the end. */
  bytes(from: number, to?: number): Uint8Array;
}

/** A {@link ByteView} over these bytes, without a copy. */
export function viewBytes(bytes: Uint8Array): ByteView {
  const u8 = (at: number) => bytes[at] ?? 0;
  const u16 = (at: number) => (u8(at) << 8) | u8(at + 1);
  const u32 = (at: number) => u16(at) * 0x1_0000 + u16(at + 2);
  return {
    length: bytes.length,
    u8,
    u16,
    u32,
    u32LittleEndian: (at) => ((u8(at + 3) << 8) | u8(at + 2)) * 0x1_0000 + ((u8(at + 1) << 8) | u8(at)),
    u64: (at) => (BigInt(u32(at)) << 32n) | BigInt(u32(at + 4)),
    letters: (at) => String.fromCharCode(u8(at), u8(at + 1), u8(at + 2), u8(at + 3)),
    bytes: (from, to) => bytes.subarray(from, to),
  };
}
