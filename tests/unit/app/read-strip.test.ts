import { describe, expect, test } from 'vitest';
import { NO_EVIDENCE } from '../../../src-core/app/clip-evidence.ts';
import { readStrip } from '../../../src-core/app/read-strip.ts';
import type { StripStill } from '../../../src-core/evidence/strip.ts';
import type { MediaFacts } from '../../../src-core/media/media-facts.ts';

const asked = async (durationSeconds: number | null, facts: MediaFacts | null = null) => {
  const wanted: StripStill[] = [];
  const ports = {
    readStrip: async (_: string, stills: readonly StripStill[]) => {
      wanted.push(...stills);
      return [];
    },
  };
  const look = { durationSeconds, place: null, movingColours: [], from: 'key-pictures' as const };
  await readStrip(ports, { id: 'c1', facts, evidence: { ...NO_EVIDENCE, look } }, null);
  return wanted;
};

describe('the strip of a clip without known reps', () => {
  test('is spread over the length that its decoder told', async () => {
    const wanted = await asked(24);
    expect(wanted).toHaveLength(12);
    expect(wanted.at(-1)?.atSeconds).toBe(23);
  });

  test('is one picture of a photo, which shows the same at any moment', async () => {
    expect(await asked(0.04, { holds: 'still' } as MediaFacts)).toHaveLength(1);
  });

  test('is empty where no length is known', async () => expect(await asked(null)).toEqual([]));
});
