import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { create } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { unpackWoff } from '../../../src-core/host/pdf/unpack-woff.ts';

/** Every file of the two families that paper is set in. */
const files = ['gentium-book-plus', 'source-sans-3'].flatMap((family) => {
  const own = createRequire(import.meta.url).resolve(`@fontsource/${family}/package.json`);
  const folder = path.join(path.dirname(own), 'files');
  const names = readdirSync(folder).filter((name) => name.endsWith('.woff'));
  return names.map((name) => path.join(folder, name));
});

interface Table {
  readonly tag: string;
  readonly checksum: number;
  readonly bytes: Buffer;
}

/** The tables of an OpenType font, each filled up to whole words (OpenType, Table directory). */
function listTables(font: Buffer): readonly Table[] {
  return Array.from({ length: font.readUInt16BE(4) }, (_, at) => {
    const entry = 12 + at * 16;
    const start = font.readUInt32BE(entry + 8);
    const length = font.readUInt32BE(entry + 12);
    return {
      tag: font.toString('latin1', entry, entry + 4),
      checksum: font.readUInt32BE(entry + 4),
      bytes: Buffer.from(font.subarray(start, start + length + (-length & 3))),
    };
  });
}

/** OpenType, Calculating checksums: words added up, the adjustment in `head` left out. */
function sumWords({ tag, bytes }: Table): number {
  if (tag === 'head') bytes.writeUInt32BE(0, 8);
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0;
  return sum;
}

describe('a font file of the web, unpacked', () => {
  test('holds every table as it was packed, to its maker’s checksum', () => {
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      const tables = listTables(unpackWoff(readFileSync(file)));
      expect(tables.map(({ tag }) => tag)).toEqual(expect.arrayContaining(['cmap', 'glyf', 'head', 'hmtx']));
      for (const table of tables) expect(sumWords(table), `${file} ${table.tag}`).toBe(table.checksum);
    }
  });

  test('is set as the packed one is, outlines and kerning included', () => {
    const file = files.find((name) => name.endsWith('gentium-book-plus-latin-700-normal.woff')) ?? '';
    const [packed, unpacked] = [readFileSync(file), unpackWoff(readFileSync(file))].map((bytes) => {
      const font = create(bytes);
      if (!('layout' in font)) throw new Error('it is one font');
      const { advanceWidth, glyphs } = font.layout('AVA Wattwanderung, 17');
      return { advanceWidth, outlines: glyphs.map(({ path: outline }) => outline.toSVG()) };
    });
    expect(unpacked).toEqual(packed);
    expect(unpacked?.outlines.join('').length).toBeGreaterThan(1000);
  });

  test('is not to be had from anything else, nor from a part of it', () => {
    const whole = readFileSync(files[0] ?? '');
    expect(() => unpackWoff(unpackWoff(whole))).toThrow('no WOFF file');
    expect(() => unpackWoff(whole.subarray(0, 40))).toThrow('no WOFF file');
    expect(() => unpackWoff(whole.subarray(0, whole.length / 2))).toThrow();
  });
});
