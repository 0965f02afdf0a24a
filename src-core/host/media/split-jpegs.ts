/** An end of image, then a start of image: two markers that stand side by side nowhere within a picture. */
const SEAM = Buffer.from([0xff, 0xd9, 0xff, 0xd8]);

/** JPEG files written one after the other, such as ffmpeg's `image2pipe` gives, each on its own again. */
export function splitJpegs(bytes: Buffer): readonly Uint8Array[] {
  const pictures: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; ) {
    const seam = bytes.indexOf(SEAM, from);
    const to = seam < 0 ? bytes.length : seam + 2;
    pictures.push(bytes.subarray(from, to));
    from = to;
  }
  return pictures;
}
