import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU32 } from '../byte-numbers.ts';
import type { Box } from './walk-boxes.ts';

/**
 * How long a track run lasts, in the track's units — ISO/IEC 14496-12 §8.8.8. Where each sample has a duration of
 * its own, as many are added up as one piece holds, and the rest taken to be like them.
 */
export async function readTrackRun(
  bytes: BoundedBytes,
  box: Box,
  defaultSampleDuration: number,
): Promise<number> {
  const head = await bytes.read(box.bodyStart, Math.min(16, box.end - box.bodyStart));
  if (head.length < 8) return 0;
  const flags = readU32(head, 0) & 0xff_ffff;
  const samples = readU32(head, 4);
  if (!(flags & 0x100)) return samples * defaultSampleDuration;
  const tableStart = box.bodyStart + 8 + (flags & 0x1 ? 4 : 0) + (flags & 0x4 ? 4 : 0);
  const rowBytes = [0x100, 0x200, 0x400, 0x800].filter((flag) => flags & flag).length * 4;
  const available = Math.min(samples * rowBytes, box.end - tableStart);
  const table = await bytes.read(tableStart, available);
  const rows = Math.floor(table.length / rowBytes);
  let total = 0;
  for (let row = 0; row < rows; row += 1) total += readU32(table, row * rowBytes);
  return rows === 0 ? 0 : (total / rows) * samples;
}
