import { inflateSync } from 'node:zlib';

/** `wOFF`. */
const SIGNATURE = 0x774f4646;

/** Bytes of the heads and of one entry of the directories of both formats. */
const WOFF = { head: 44, entry: 20 } as const;
const SFNT = { head: 12, entry: 16 } as const;

/**
 * A font file of the web as the OpenType font that was packed into it (W3C, WOFF File Format 1.0, sections 3 to 5).
 * Packed, a table would be inflated anew for each glyph that is read of it. Throws where it is no such file.
 */
export function unpackWoff(packed: Buffer): Buffer {
  if (packed.length < WOFF.head || packed.readUInt32BE(0) !== SIGNATURE) throw new Error('no WOFF file');
  const count = packed.readUInt16BE(12);
  const directory = Buffer.alloc(SFNT.head + count * SFNT.entry);
  packed.copy(directory, 0, 4, 8);
  writeSearch(directory, count);
  const parts: Buffer[] = [directory];
  let offset = directory.length;
  for (let at = 0; at < count; at += 1) {
    const from = WOFF.head + at * WOFF.entry;
    const table = readTable(packed, from);
    const to = SFNT.head + at * SFNT.entry;
    packed.copy(directory, to, from, from + 4);
    packed.copy(directory, to + 4, from + 16, from + 20);
    directory.writeUInt32BE(offset, to + 8);
    directory.writeUInt32BE(table.length, to + 12);
    const padding = Buffer.alloc(-table.length & 3);
    parts.push(table, padding);
    offset += table.length + padding.length;
  }
  return Buffer.concat(parts);
}

/** A table is kept as it is where packing would not make it shorter. */
function readTable(packed: Buffer, entry: number): Buffer {
  const start = packed.readUInt32BE(entry + 4);
  const kept = packed.subarray(start, start + packed.readUInt32BE(entry + 8));
  const length = packed.readUInt32BE(entry + 12);
  const table = kept.length < length ? inflateSync(kept) : kept;
  if (table.length !== length) throw new Error('a table of the WOFF file is cut short');
  return table;
}

/** What helps to search the directory by halving (OpenType, Table directory). */
function writeSearch(directory: Buffer, count: number): void {
  const halvings = Math.floor(Math.log2(count));
  const range = 2 ** halvings * SFNT.entry;
  directory.writeUInt16BE(count, 4);
  directory.writeUInt16BE(range, 6);
  directory.writeUInt16BE(halvings, 8);
  directory.writeUInt16BE(count * SFNT.entry - range, 10);
}
