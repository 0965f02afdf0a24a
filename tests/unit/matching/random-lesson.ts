import fc from 'fast-check';
import type { PlacedClip } from '../../../src-core/matching/observation.ts';
import type { SmallWalk } from './every-story.ts';
import { placed } from './filmed.ts';

const fault = fc.oneof(
  fc.record({ kind: fc.constantFrom('miss', 'swap', 'unknown', 'untimed', 'doubt', 'adrift') }),
  fc.record({ kind: fc.constantFrom('again', 'return', 'stray', 'unknown', 'hand') }),
);

type Fault = { readonly kind: string };

/** A walk along a route of three to six slots with up to seven faults, at most eight clips. */
export const randomLesson: fc.Arbitrary<SmallWalk> = fc
  .record({
    slots: fc.integer({ min: 3, max: 6 }),
    gaps: fc.array(fc.integer({ min: -1, max: 11 }), { minLength: 8, maxLength: 8 }),
    faults: fc.array(fc.tuple(fault, fc.nat(20), fc.nat(20)), { maxLength: 7 }),
    scores: fc.array(
      fc.dictionary(fc.constantFrom(...'ABCDEF'), fc.double({ min: 0, max: 1, noNaN: true })),
      {
        minLength: 8,
        maxLength: 8,
      },
    ),
    retake: fc.constantFrom<'first' | 'last'>('first', 'last'),
  })
  .map(({ slots, gaps, faults, scores, retake }) => {
    const route = [...'ABCDEF'].slice(0, slots);
    let stations = route;
    for (const [{ kind }, at, other] of faults) stations = changeWalk(stations, kind, at, other);
    let minute = 0;
    let clips = stations.slice(0, 8).map((station, position) => {
      minute += gaps[position] ?? 0;
      return placed(station, position, { startMs: minute * 60_000 });
    });
    for (const [{ kind }, at, other] of faults) {
      const position = clips.length === 0 ? 0 : at % clips.length;
      clips = clips.map((clip, index) =>
        index === position
          ? changeClip(clip, kind, { other: other % (slots + 1), scores: scores[index] ?? {} })
          : clip,
      );
    }
    return { route, clips, retake };
  });

function changeWalk(stations: readonly string[], kind: Fault['kind'], at: number, other: number): string[] {
  const position = stations.length === 0 ? 0 : at % stations.length;
  const station = stations[position] ?? 'X';
  if (kind === 'miss') return stations.toSpliced(position, 1);
  if (kind === 'swap')
    return stations.toSpliced(position, 2, ...stations.slice(position, position + 2).toReversed());
  if (kind === 'again') return stations.toSpliced(position, 0, station);
  if (kind === 'return') return stations.toSpliced(other % (stations.length + 1), 0, station);
  if (kind === 'stray') return stations.toSpliced(position, 0, 'X');
  return [...stations];
}

function changeClip(
  clip: PlacedClip,
  kind: Fault['kind'],
  { other, scores }: { readonly other: number; readonly scores: Record<string, number> },
): PlacedClip {
  if (kind === 'unknown') return { ...clip, observation: { known: false, scores } };
  if (kind === 'untimed') return { ...clip, startMs: null };
  if (kind === 'doubt') return { ...clip, uncertaintySeconds: 3600 };
  if (kind === 'adrift') return { ...clip, hasOrder: false };
  if (kind === 'hand') return { ...clip, slotByTeacher: other };
  return clip;
}
