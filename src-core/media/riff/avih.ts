import type { Seconds } from '../../platform/units.ts';
import { viewBytes } from '../byte-view.ts';

/** AVI main header — Microsoft, "AVIMAINHEADER structure": microseconds per frame at 0, total frames at 16. */
export function findAviDuration(body: Uint8Array): Seconds | null {
  const view = viewBytes(body);
  if (view.length < 20) return null;
  const seconds = (view.u32LittleEndian(0) * view.u32LittleEndian(16)) / 1e6;
  return seconds > 0 ? seconds : null;
}
