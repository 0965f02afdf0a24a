import type { EpochMs } from '../../platform/units.ts';

/** 2001-01-01T00:00:00Z, which EBML dates count from, in Unix milliseconds — RFC 8794 §7.6. */
const EPOCH_2001_MS = 978_307_200_000;

/**
 * An EBML date — RFC 8794 §7.6: signed nanoseconds since 2001-01-01T00:00:00 UTC in 8 bytes; no bytes mean that
 * very instant. Null for any other length, which the standard does not allow.
 */
export function readDateElement(
  body: Uint8Array,
): { readonly raw: string; readonly instantMs: EpochMs } | null {
  if (body.length === 0) return { raw: '0', instantMs: EPOCH_2001_MS };
  if (body.length !== 8) return null;
  const nanoseconds = new DataView(body.buffer, body.byteOffset, 8).getBigInt64(0);
  return { raw: nanoseconds.toString(), instantMs: EPOCH_2001_MS + Number(nanoseconds / 1000n) / 1000 };
}
