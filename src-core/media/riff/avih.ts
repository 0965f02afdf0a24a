import type { Seconds } from '../../platform/units.ts';
import { readU32LittleEndian } from '../byte-numbers.ts';

/** AVI main header — Microsoft, "AVIMAINHEADER structure": microseconds per frame at 0, total frames at 16. */
export function findAviDuration(body: Uint8Array): Seconds | null {
  if (body.length < 20) return null;
  const seconds = (readU32LittleEndian(body, 0) * readU32LittleEndian(body, 16)) / 1e6;
  return seconds > 0 ? seconds : null;
}
