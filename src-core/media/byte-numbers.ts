/** Unsigned 8 bits; zero beyond the end, as all of these read, so that callers check the length first. */
export function readU8(bytes: Uint8Array, at: number): number {
  return bytes[at] ?? 0;
}

/** Unsigned 16 bits, big-endian as in boxes and EBML; bytes beyond the end count as zero. */
export function readU16(bytes: Uint8Array, at: number): number {
  return ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
}

/** Unsigned 32 bits, big-endian as in boxes and EBML, 0 to 4294967295; bytes beyond the end count as zero. */
export function readU32(bytes: Uint8Array, at: number): number {
  return readU16(bytes, at) * 0x1_0000 + readU16(bytes, at + 2);
}

/** Unsigned 32 bits, little-endian as in RIFF, 0 to 4294967295; bytes beyond the end count as zero. */
export function readU32LittleEndian(bytes: Uint8Array, at: number): number {
  const low = (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8);
  const high = (bytes[at + 2] ?? 0) | ((bytes[at + 3] ?? 0) << 8);
  return high * 0x1_0000 + low;
}

/** Unsigned 64 bits, big-endian as in boxes of version 1, exact; bytes beyond the end count as zero. */
export function readU64(bytes: Uint8Array, at: number): bigint {
  return (BigInt(readU32(bytes, at)) << 32n) | BigInt(readU32(bytes, at + 4));
}

/** Four letters as written, each byte one letter (Latin-1, so that © is A9). */
export function readLetters(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(bytes[at] ?? 0, bytes[at + 1] ?? 0, bytes[at + 2] ?? 0, bytes[at + 3] ?? 0);
}
