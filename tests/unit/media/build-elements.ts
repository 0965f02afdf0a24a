import { join, type Part, u64, utf8 } from './build-boxes.ts';

/** Size field of one EBML element, 8 bytes long; null for "unknown". */
function size(value: number | null): Uint8Array {
  const field = value === null ? u64(0xffff_ffff_ffff_ffffn) : u64(value);
  field[0] = value === null ? 0x01 : (field[0] ?? 0) | 0x01;
  return field;
}

export function id(value: number): Uint8Array {
  const bytes: number[] = [];
  for (let rest = value; rest > 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  return Uint8Array.from(bytes);
}

export function element(elementId: number, ...parts: readonly Part[]): Uint8Array {
  const body = join(...parts);
  return join(id(elementId), size(body.length), body);
}

export function unknownSizeElement(elementId: number, ...parts: readonly Part[]): Uint8Array {
  return join(id(elementId), size(null), ...parts);
}

function float64(value: number): Uint8Array {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setFloat64(0, value);
  return bytes;
}

export function int64(value: bigint): Uint8Array {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setBigInt64(0, value);
  return bytes;
}

export function ebmlHeader(docType = 'matroska'): Uint8Array {
  return element(0x1a45dfa3, element(0x4282, docType));
}

export function info(...parts: readonly Part[]): Uint8Array {
  return element(0x1549a966, element(0x4489, float64(12_000)), ...parts);
}

export function dateUtc(nanoseconds: bigint): Uint8Array {
  return element(0x4461, int64(nanoseconds));
}

export function tracks(codec = 'V_VP8', type = 1): Uint8Array {
  return element(0x1654ae6b, element(0xae, element(0x83, Uint8Array.of(type)), element(0x86, codec)));
}

export function tags(values: Readonly<Record<string, string>>): Uint8Array {
  return element(
    0x1254c367,
    element(
      0x7373,
      ...Object.entries(values).map(([name, text]) =>
        element(0x67c8, element(0x45a3, name), element(0x4487, utf8(text))),
      ),
    ),
  );
}

export function segment(...parts: readonly Part[]): Uint8Array {
  return element(0x18538067, ...parts);
}
