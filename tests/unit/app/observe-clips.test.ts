import { describe, expect, test } from 'vitest';
import type { ClipReading } from '../../../src-core/app/clip-reading.ts';
import { observeClips } from '../../../src-core/app/observe-clips.ts';
import { describePlace } from '../../../src-core/evidence/place-look.ts';
import { foldDecisions } from '../../../src-core/marking/decisions.ts';
import { drawPlace } from '../evidence/draw-place.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';

/** A clip filmed at a place, with the card of a station in it or none. */
const buildClip = (id: string, seed: number, station: string | null) =>
  ({
    id,
    card: station === null ? null : { station: { code: station } },
    evidence: { look: { place: describePlace(drawPlace({ seed })) }, movements: [] },
  }) as unknown as ClipReading;

/** A plan with so many stations, and of each two clips with a card at two places. */
function buildCircuit(stations: number) {
  const plan = buildSmallPlan();
  const [first] = plan.stations;
  if (!first) throw new Error('a plan has stations');
  const codes = Array.from({ length: stations }, (_, at) => `S${at}`);
  const clips = codes.flatMap((code, at) => [
    buildClip(`${code} first`, 2 * at + 1, code),
    buildClip(`${code} second`, 2 * at + 2, code),
  ]);
  return { plan: { ...plan, stations: codes.map((code) => ({ ...first, code })) }, clips };
}

function findLike(stations: number, seed: number): string | undefined {
  const { plan, clips } = buildCircuit(stations);
  const observed = observeClips([...clips, buildClip('asked', seed, null)], plan, foldDecisions([], []));
  return observed.get('asked')?.lookAlike?.like;
}

describe('the places that a clip without a card is compared with', () => {
  test('are all labelled clips of a usual circuit', () => {
    expect(findLike(8, 1)).toBe('S0 first');
    expect(findLike(8, 2)).toBe('S0 second');
  });

  test('are fewer of each station where there are very many, so that the class does not wait', () => {
    expect(findLike(40, 1)).toBe('S0 first');
    expect(findLike(40, 2)).toBeUndefined();
  });
});
