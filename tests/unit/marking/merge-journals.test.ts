import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JournalEvent } from '../../../src-core/marking/journal-event.ts';
import { compareEvents, mergeJournals } from '../../../src-core/marking/merge-journals.ts';
import { buildTestEvent } from './harbour.ts';

/** Events of a small pool, so that ids and instants often meet, also with differing content. */
const event: fc.Arbitrary<JournalEvent> = fc
  .tuple(fc.nat(8), fc.nat(3), fc.constantFrom('A', 'B'))
  .map(([n, second, station]) => ({
    ...buildTestEvent(n, { kind: 'station-set', clip: 'clip-1', station }),
    at: `2025-05-15T14:00:0${second}.000Z`,
  }));

const journal = fc.array(event, { maxLength: 10 });

describe('merging journals', () => {
  test('keeps every event once, in the order of instants', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        const merged = mergeJournals(a, b);
        expect(new Set(merged.map(({ id }) => id))).toEqual(new Set([...a, ...b].map(({ id }) => id)));
        expect(merged).toEqual([...merged].sort(compareEvents));
        expect(new Set(merged.map(({ id }) => id)).size).toBe(merged.length);
      }),
    );
  });

  test('again with one of them adds nothing', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        const merged = mergeJournals(a, b);
        expect(mergeJournals(merged, a)).toEqual(merged);
        expect(mergeJournals(merged, merged)).toEqual(merged);
      }),
    );
  });

  test('does not depend on which comes first', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        expect(mergeJournals(a, b)).toEqual(mergeJournals(b, a));
      }),
    );
  });

  test('does not depend on how three are paired', () => {
    fc.assert(
      fc.property(journal, journal, journal, (a, b, c) => {
        const all = mergeJournals(a, b, c);
        expect(mergeJournals(mergeJournals(a, b), c)).toEqual(all);
        expect(mergeJournals(a, mergeJournals(b, c))).toEqual(all);
      }),
    );
  });

  test('of none is none', () => {
    expect(mergeJournals()).toEqual([]);
    expect(mergeJournals([], [])).toEqual([]);
  });
});
