/** A number of variable length — RFC 8794 §4: the first one bit tells its length, the rest is its value. */
export interface VariableNumber {
  /** With the length marker for ids, without it for sizes; null for a size of all ones, "unknown". */
  readonly value: number | null;
  /** Bytes it takes: 1 to 8. */
  readonly bytes: number;
}

/** An element's id, 1 to 4 bytes; null where no id can begin so or the bytes end. */
export function readElementId(bytes: Uint8Array, at: number): VariableNumber | null {
  const length = findLength(bytes, at);
  if (length === null || length > 4) return null;
  let value = 0;
  for (let index = 0; index < length; index += 1) value = value * 256 + (bytes[at + index] ?? 0);
  return { value, bytes: length };
}

/** An element's size, 1 to 8 bytes. Above 2^53 it is not exact, which no file reaches. */
export function readElementSize(bytes: Uint8Array, at: number): VariableNumber | null {
  const length = findLength(bytes, at);
  if (length === null) return null;
  const mask = 0xff >> length;
  let value = (bytes[at] ?? 0) & mask;
  let isUnknown = value === mask;
  for (let index = 1; index < length; index += 1) {
    const byte = bytes[at + index] ?? 0;
    value = value * 256 + byte;
    isUnknown &&= byte === 0xff;
  }
  return { value: isUnknown ? null : value, bytes: length };
}

function findLength(bytes: Uint8Array, at: number): number | null {
  const first = bytes[at];
  if (first === undefined || first === 0) return null;
  const length = Math.clz32(first) - 23;
  return at + length <= bytes.length ? length : null;
}
