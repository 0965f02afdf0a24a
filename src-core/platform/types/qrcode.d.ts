// The part of qrcode the pure core uses. The community types pull in Node's, which the core must not see.

declare const qrcode: {
  /** Encodes a text as a QR symbol of the smallest version that holds it (ISO/IEC 18004). Throws where none does. */
  create(
    text: string,
    options: { readonly errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' },
  ): {
    readonly modules: {
      readonly size: number;
      /** 1 for a dark module, row by row. */
      readonly data: Uint8Array;
    };
  };
};

export default qrcode;
