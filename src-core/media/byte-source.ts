/** A file that is read in ranges, never whole. */
export interface ByteSource {
  /** Length in bytes. */
  readonly size: number;
  /**
   * The bytes from `offset` on, `length` at most: fewer at the end of the file, none beyond it. Rejects only
   * where the device fails.
   */
  read(offset: number, length: number): Promise<Uint8Array>;
}
