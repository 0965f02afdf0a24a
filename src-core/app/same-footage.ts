import { findSameFootage, type MotionPrint } from '../evidence/motion-print.ts';
import type { Flag } from '../matching/flag.ts';
import type { ClipReading } from './clip-reading.ts';
import type { Owners } from './settle-owners.ts';

// Every decision grades the lesson anew, and no pair of prints is compared twice for that: three hundred clips have
// forty-five thousand pairs.
const compared = new WeakMap<MotionPrint, WeakMap<MotionPrint, boolean>>();

/**
 * A flag for every clip that shows the footage of another file, on the desk of whoever handed in the later one: one a
 * clip, however many copies there are, for each is settled by itself.
 */
export function findSameFootageFlags(
  clips: readonly ClipReading[],
  { squadOf }: Pick<Owners, 'squadOf'>,
): readonly Flag[] {
  const watched = clips.flatMap(({ id, evidence }) =>
    evidence.print ? [{ clip: id, print: evidence.print }] : [],
  );
  return watched.flatMap(({ clip, print }, at): Flag[] => {
    const like = watched.slice(0, at).find((one) => isSameFootage(one.print, print))?.clip;
    if (like === undefined) return [];
    const [squad, likeSquad] = [squadOf.get(clip) ?? '', squadOf.get(like) ?? null];
    return [{ code: 'same-footage', squad, clip, like, likeSquad }];
  });
}

function isSameFootage(one: MotionPrint, other: MotionPrint): boolean {
  const known = compared.get(one) ?? new WeakMap<MotionPrint, boolean>();
  compared.set(one, known);
  const before = known.get(other);
  if (before !== undefined) return before;
  const pair = [
    { clip: 'one', print: one },
    { clip: 'other', print: other },
  ];
  const found = findSameFootage(pair).length > 0;
  known.set(other, found);
  return found;
}
