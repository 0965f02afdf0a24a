import type { RepsFinding } from '../evidence/reps-finding.ts';
import { listStripStills } from '../evidence/strip.ts';
import type { ClipReading } from './clip-reading.ts';
import type { LessonPorts, StripPicture } from './ports.ts';

/**
 * The strip of one clip: a still for each rep where the movement turns, numbered; evenly spaced ones where none are
 * known. Reads the evidence cache alone, so that it stands as soon as the clip is opened; empty for a clip that was
 * never looked at.
 */
export function readStrip(
  ports: Pick<LessonPorts, 'readStrip'>,
  clip: Pick<ClipReading, 'id' | 'evidence' | 'facts'>,
  reps: RepsFinding | null,
): Promise<readonly StripPicture[]> {
  const durationSeconds = clip.evidence.look?.durationSeconds ?? clip.facts?.durationSeconds ?? null;
  return ports.readStrip(clip.id, listStripStills(reps, durationSeconds));
}
