import type { RepsFinding } from '../evidence/reps-finding.ts';
import { listStripStills, type StripStill } from '../evidence/strip.ts';
import type { ClipReading } from './clip-reading.ts';
import type { LessonPorts, StripPicture } from './ports.ts';

type StripClip = Pick<ClipReading, 'id' | 'evidence' | 'facts'>;

/**
 * The strip of one clip: a still for each rep where the movement turns, numbered; evenly spaced ones where none are
 * known, one of a photo. Reads the evidence cache alone, so that it stands as soon as the clip is opened; empty for a
 * clip that was never looked at.
 */
export function readStrip(
  ports: Pick<LessonPorts, 'readStrip'>,
  clip: StripClip,
  reps: RepsFinding | null,
): Promise<readonly StripPicture[]> {
  return ports.readStrip(clip.id, listStrip(clip, reps));
}

/** The moments of the same strip, whether or not there are pictures of them. */
export function listStrip({ evidence, facts }: StripClip, reps: RepsFinding | null): readonly StripStill[] {
  const stills = listStripStills(reps, evidence.look?.durationSeconds ?? facts?.durationSeconds ?? null);
  // A photo that was searched for its card has the length of one picture, which is the same at any moment.
  return facts?.holds === 'still' ? stills.slice(0, 1) : stills;
}
