// The part of exifr the pure core uses. The package's own types pull in Node's, which the core must not see.

interface ExifrOptions {
  readonly pick?: readonly string[];
  readonly reviveValues?: boolean;
  readonly translateValues?: boolean;
}

declare const exifr: {
  /** Reads EXIF tags from a whole JPEG, HEIC or PNG file; undefined where it holds none; rejects on other bytes. */
  parse(bytes: Uint8Array, options?: ExifrOptions): Promise<Readonly<Record<string, unknown>> | undefined>;
};

export default exifr;
