import type { ByteSource } from '../../../src-core/media/byte-source.ts';

/** Whatever can stand in a file: bytes, letters (one byte each), or a list of such. */
export type Part = Uint8Array | string | readonly Part[];

export function join(...parts: readonly Part[]): Uint8Array {
  const flat = parts.map((part) => {
    if (typeof part === 'string') return Uint8Array.from(part, (letter) => letter.charCodeAt(0));
    return part instanceof Uint8Array ? part : join(...part);
  });
  const all = new Uint8Array(flat.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of flat) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

export function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

export function u16(value: number): Uint8Array {
  return Uint8Array.of(value >>> 8, value);
}

export function u32(value: number): Uint8Array {
  return Uint8Array.of(value >>> 24, value >>> 16, value >>> 8, value);
}

export function u64(value: number | bigint): Uint8Array {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setBigUint64(0, BigInt(value));
  return bytes;
}

export function zeros(count: number): Uint8Array {
  return new Uint8Array(count);
}

export function box(type: string, ...parts: readonly Part[]): Uint8Array {
  const body = join(...parts);
  return join(u32(body.length + 8), type, body);
}

/** A box with its size in 64 bits. */
export function largeBox(type: string, ...parts: readonly Part[]): Uint8Array {
  const body = join(...parts);
  return join(u32(1), type, u64(body.length + 16), body);
}

export function ftyp(brand: string): Uint8Array {
  return box('ftyp', brand, u32(512), brand);
}

interface HeaderFields {
  readonly version?: 0 | 1;
  readonly created?: number | bigint;
  readonly modified?: number | bigint;
  readonly timescale?: number;
  readonly duration?: number;
}

function times({ version = 0, created = 0, modified = created }: HeaderFields): Part {
  return version === 1 ? [u64(created), u64(modified)] : [u32(Number(created)), u32(Number(modified))];
}

export function mvhd(fields: HeaderFields): Uint8Array {
  const { version = 0, timescale = 1000, duration = 0 } = fields;
  const length = version === 1 ? u64(duration) : u32(duration);
  return box('mvhd', Uint8Array.of(version, 0, 0, 0), times(fields), u32(timescale), length, zeros(80));
}

function tkhd(fields: HeaderFields & { readonly id?: number }): Uint8Array {
  const { version = 0, id = 1, duration = 0 } = fields;
  const length = version === 1 ? u64(duration) : u32(duration);
  return box('tkhd', Uint8Array.of(version, 0, 0, 7), times(fields), u32(id), u32(0), length, zeros(60));
}

function mdhd(fields: HeaderFields): Uint8Array {
  const { version = 0, timescale = 1000, duration = 0 } = fields;
  const length = version === 1 ? u64(duration) : u32(duration);
  return box('mdhd', Uint8Array.of(version, 0, 0, 0), times(fields), u32(timescale), length, zeros(4));
}

export function hdlr(handler: string): Uint8Array {
  return box('hdlr', u32(0), 'mhlr', handler, zeros(12));
}

function stsd(codec: string): Uint8Array {
  return box('stsd', u32(0), u32(1), box(codec, zeros(8)));
}

/** A track with all that is read of one. */
export function trak(
  fields: HeaderFields & { readonly id?: number; readonly handler?: string; readonly codec?: string } = {},
): Uint8Array {
  const { handler = 'vide', codec = 'avc1' } = fields;
  return box(
    'trak',
    tkhd(fields),
    box('mdia', mdhd(fields), hdlr(handler), box('minf', box('stbl', stsd(codec)))),
  );
}

/** Named values as QuickTime keeps them in `moov/meta`. */
export function metaKeys(values: Readonly<Record<string, string>>): Uint8Array {
  return box('meta', box('hdlr', u32(0), u32(0), 'mdta', zeros(13)), ...keysAndValues(values));
}

export function keysAndValues(values: Readonly<Record<string, string>>): Uint8Array[] {
  const entries = Object.entries(values);
  return [
    box('keys', u32(0), u32(entries.length), ...entries.map(([key]) => box('mdta', key))),
    box(
      'ilst',
      ...entries.map(([, value], index) =>
        join(u32(value.length + 24), u32(index + 1), box('data', u32(1), u32(0), utf8(value))),
      ),
    ),
  ];
}

/** A small whole movie: 12 s of video unless said otherwise, `moov` before `mdat`. */
export function movie(
  fields: HeaderFields & { readonly brand?: string; readonly inside?: Part } = {},
): Uint8Array {
  const { brand = 'isom', inside = [], ...header } = { duration: 12_000, ...fields };
  return join(
    ftyp(brand),
    box('moov', mvhd(header), trak({ ...header, id: 1 }), inside),
    box('mdat', zeros(64)),
  );
}

/** A source that counts what is asked of it. */
export interface CountingSource extends ByteSource {
  readonly asked: { reads: number; bytes: number; largest: number };
}

export function sourceOf(bytes: Uint8Array): CountingSource {
  return sparseSource(bytes.length, [{ at: 0, bytes }]);
}

/** A file of any size of which only some stretches hold anything; the rest reads as zeros. */
export function sparseSource(
  size: number,
  pieces: readonly { readonly at: number; readonly bytes: Uint8Array }[],
): CountingSource {
  const asked = { reads: 0, bytes: 0, largest: 0 };
  return {
    size,
    asked,
    async read(offset, length) {
      const wanted = Math.max(0, Math.min(length, size - offset));
      asked.reads += 1;
      asked.bytes += wanted;
      asked.largest = Math.max(asked.largest, wanted);
      const result = new Uint8Array(wanted);
      for (const { at, bytes } of pieces) {
        const from = Math.max(at, offset);
        const to = Math.min(at + bytes.length, offset + wanted);
        if (from < to) result.set(bytes.subarray(from - at, to - at), from - offset);
      }
      return result;
    },
  };
}
