import { box, join, type Part, u16, u32, zeros } from './build-boxes.ts';

/** Text tags of EXIF, by number: 0x010f make, 0x0110 model, 0x9003 DateTimeOriginal, 0x9011 its offset. */
export type ExifTexts = Readonly<Record<number, string>>;

/** A TIFF block with an IFD0 and an EXIF IFD, every value a text kept outside its entry. */
export function tiff(ifd0: ExifTexts, exif: ExifTexts): Uint8Array {
  const ifd0Entries = Object.entries(ifd0);
  const exifAt = 8 + 2 + (ifd0Entries.length + 1) * 12 + 4 + textBytes(ifd0);
  const first = ifd(8, ifd0, [u16(0x8769), u16(4), u32(1), u32(exifAt)]);
  return join('MM', u16(42), u32(8), first, ifd(exifAt, exif, null));
}

function textBytes(texts: ExifTexts): number {
  return Object.values(texts).reduce((sum, text) => sum + Math.max(5, text.length + 1), 0);
}

function ifd(at: number, texts: ExifTexts, pointer: Part | null): Uint8Array {
  const entries = Object.entries(texts);
  const count = entries.length + (pointer ? 1 : 0);
  let valueAt = at + 2 + count * 12 + 4;
  const rows: Part[] = [];
  const values: Part[] = [];
  for (const [tag, text] of entries) {
    const value = join(text, zeros(Math.max(5, text.length + 1) - text.length));
    rows.push([u16(Number(tag)), u16(2), u32(value.length), u32(valueAt)]);
    values.push(value);
    valueAt += value.length;
  }
  return join(u16(count), rows, pointer ?? [], u32(0), values);
}

export function jpeg(block: Uint8Array): Uint8Array {
  const app1 = join('Exif', zeros(2), block);
  return join(
    Uint8Array.of(0xff, 0xd8, 0xff, 0xe1),
    u16(app1.length + 2),
    app1,
    Uint8Array.of(0xff, 0xd9),
    zeros(64),
  );
}

/** A HEIC file whose one item is EXIF, kept in `mdat` — ISO/IEC 23008-12 annex A. */
export function heic(block: Uint8Array): Uint8Array {
  const exifItem = join(u32(6), 'Exif', zeros(2), block);
  const build = (offset: number) =>
    join(
      box('ftyp', 'heic', u32(0), 'mif1', 'heic'),
      box(
        'meta',
        u32(0),
        box('hdlr', u32(0), u32(0), 'pict', zeros(13)),
        box('iinf', u32(0), u16(1), box('infe', Uint8Array.of(2, 0, 0, 0), u16(1), u16(0), 'Exif', zeros(1))),
        box(
          'iloc',
          Uint8Array.of(0, 0, 0, 0, 0x44, 0),
          u16(1),
          u16(1),
          u16(0),
          u16(1),
          u32(offset),
          u32(exifItem.length),
        ),
      ),
    );
  return join(build(build(0).length + 8), box('mdat', exifItem));
}
