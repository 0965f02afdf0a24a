import { findSameFootage } from '../evidence/motion-print.ts';
import type { Flag } from '../matching/flag.ts';
import type { ClipReading } from './clip-reading.ts';
import type { Owners } from './settle-owners.ts';

/** A flag for every clip that shows the footage of another file, on the desk of whoever handed in the later one. */
export function findSameFootageFlags(
  clips: readonly ClipReading[],
  { squadOf }: Pick<Owners, 'squadOf'>,
): readonly Flag[] {
  const watched = clips.flatMap(({ id, evidence }) =>
    evidence.print ? [{ clip: id, print: evidence.print }] : [],
  );
  return findSameFootage(watched).map(([like, clip]): Flag => {
    const likeSquad = squadOf.get(like) ?? null;
    return { code: 'same-footage', squad: squadOf.get(clip) ?? '', clip, like, likeSquad };
  });
}
