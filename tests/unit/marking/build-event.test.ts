import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildEvent, findRedo, findUndo } from '../../../src-core/marking/build-event.ts';
import { journalActKindSchema, journalEventSchema } from '../../../src-core/marking/journal-event.ts';
import { compareEvents } from '../../../src-core/marking/merge-journals.ts';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import { arbitraryDecision, arbitraryMoves, playMoves } from './arbitrary-journal.ts';
import { buildEvents, getTestId } from './harbour.ts';

const NOW_MS = Date.parse('2025-05-15T15:00:00.000Z');
const stamp = { id: getTestId(99), nowMs: NOW_MS, who: 'M. Ferrow' };

describe('a new event', () => {
  test('carries what was decided before on the same matter', () => {
    const state = replayJournal(
      buildEvents([
        { kind: 'criterion-marked', clip: 'clip-1', criterion: 'reps', met: false },
        { kind: 'criterion-marked', clip: 'clip-1', criterion: 'place', met: true },
      ]),
    );
    const event = buildEvent(
      state,
      { kind: 'criterion-marked', clip: 'clip-1', criterion: 'reps', met: true },
      stamp,
    );
    expect(event.was).toEqual({ kind: 'criterion-marked', clip: 'clip-1', criterion: 'reps', met: false });
  });

  test('carries null where nothing was decided before', () => {
    const state = replayJournal([]);
    expect(
      buildEvent(state, { kind: 'clock-set', squad: 'plum', correctionSeconds: 5 }, stamp).was,
    ).toBeNull();
  });

  test('deciding what it carries as earlier brings the earlier state back', () => {
    fc.assert(
      fc.property(arbitraryMoves, arbitraryDecision, (moves, next) => {
        // Confirming adds answers that its earlier state does not name, so it is not its own way back.
        fc.pre(next.kind !== 'clip-confirmed');
        const before = playMoves(moves);
        const { was } = buildEvent(replayJournal(before), next, stamp);
        fc.pre(was !== null);
        const back = playMoves(was ? [next, was] : [next], before);
        expect(replayJournal(back).decisions).toEqual(replayJournal(before).decisions);
      }),
    );
  });

  test('is strictly later than the one before it, even when the clock was put back', () => {
    fc.assert(
      fc.property(arbitraryMoves, (moves) => {
        const events = playMoves(moves);
        expect(events).toEqual([...events].sort(compareEvents));
        expect(new Set(events.map(({ at }) => at)).size).toBe(events.length);
      }),
    );
  });

  test('is one that the schema takes, whatever was decided', () => {
    fc.assert(
      fc.property(arbitraryMoves, (moves) => {
        for (const event of playMoves(moves)) expect(journalEventSchema.parse(event)).toEqual(event);
      }),
    );
  });

  test('is none where there is nothing to undo or redo', () => {
    const state = replayJournal([]);
    expect([findUndo(state, stamp), findRedo(state, stamp)]).toEqual([null, null]);
  });
});

describe('the schema of events', () => {
  const [event] = buildEvents([
    {
      kind: 'points-overridden',
      of: { type: 'pupil', pupil: 'k-1' },
      change: { type: 'by', points: 1 },
      reason: 'helped',
    },
  ]);

  test.each([
    ['an override without a reason', { ...event, what: { ...event?.what, reason: '  ' } }],
    ['an instant with an offset', { ...event, at: '2025-05-15T11:00:00.000-03:00' }],
    ['an instant without milliseconds', { ...event, at: '2025-05-15T14:00:00Z' }],
    ['an id that is no ULID', { ...event, id: 'first' }],
    ['a key that it does not know', { ...event, colour: 'red' }],
    ['an event that nobody made', { ...event, who: '' }],
  ])('refuses %s', (_, changed) => {
    expect(journalEventSchema.safeParse(changed).success).toBe(false);
  });

  test('lists every kind of act', () => {
    const kinds = journalEventSchema.shape.what.options.map((option) => option.shape.kind.value);
    expect([...kinds].sort()).toEqual([...journalActKindSchema.options].sort());
  });
});
