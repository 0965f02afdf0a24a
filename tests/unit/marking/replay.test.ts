import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import { arbitraryDecision, arbitraryMoves, type Move, playMoves } from './arbitrary-journal.ts';
import { buildEvents, buildTestEvent, getTestId } from './harbour.ts';

const stateOf = (moves: readonly Move[]) => replayJournal(playMoves(moves));
const decisionsOf = (moves: readonly Move[]) => stateOf(moves).decisions;

describe('a replay', () => {
  test('of nothing is nothing', () => {
    const state = replayJournal([]);
    expect(state).toMatchObject({ undoTarget: null, redoTarget: null, lastAt: null, idle: [] });
    expect(state.decisions.answers.size).toBe(0);
  });

  test('lets a later decision on the same matter win', () => {
    const { stationOf } = decisionsOf([
      { kind: 'station-set', clip: 'clip-1', station: 'A' },
      { kind: 'station-set', clip: 'clip-1', station: 'B' },
    ]);
    expect([...stationOf]).toEqual([['clip-1', 'B']]);
  });

  test('takes null as the word taken back', () => {
    const { slotOf } = decisionsOf([
      { kind: 'clip-placed', clip: 'clip-1', slot: 'none' },
      { kind: 'clip-placed', clip: 'clip-1', slot: null },
    ]);
    expect(slotOf.size).toBe(0);
  });

  test('confirms only the answers that were shown and leaves the others', () => {
    const { answers } = decisionsOf([
      { kind: 'criterion-marked', clip: 'clip-1', criterion: 'reps', met: false },
      { kind: 'clip-confirmed', clip: 'clip-1', answers: { place: true } },
    ]);
    expect(Object.fromEntries(answers.get('clip-1') ?? [])).toEqual({ reps: false, place: true });
  });

  test('gives the same state however often and in whatever order the events come', () => {
    fc.assert(
      fc.property(arbitraryMoves, fc.infiniteStream(fc.nat()), (moves, salt) => {
        const events = playMoves(moves);
        const shuffled = [...events, ...events]
          .map((event) => ({ event, key: salt.next().value }))
          .sort((a, b) => Number(a.key) - Number(b.key));
        expect(replayJournal(shuffled.map(({ event }) => event))).toEqual(replayJournal(events));
      }),
    );
  });

  test('keeps every hand-in, which nothing undoes', () => {
    const handedIn = {
      kind: 'handed-in' as const,
      files: ['sheet.csv'],
      pupils: 34,
      unconfirmed: 2,
      openFlags: 0,
    };
    const events = buildEvents([{ kind: 'station-set', clip: 'clip-1', station: 'A' }, handedIn]);
    const state = replayJournal([...events, buildTestEvent(2, { kind: 'undone', target: getTestId(1) })]);
    expect(state.decisions.handedIn).toHaveLength(1);
    expect(state.undoTarget).toBe(getTestId(0));
    expect(state.idle).toEqual([getTestId(2)]);
  });
});

describe('undo and redo', () => {
  test('undo takes back exactly the last decision, as often as there are any', () => {
    fc.assert(
      fc.property(fc.array(arbitraryDecision, { maxLength: 12 }), fc.nat(12), (made, steps) => {
        const undone = [...made, ...Array<'undo'>(steps).fill('undo')];
        expect(decisionsOf(undone)).toEqual(decisionsOf(made.slice(0, Math.max(0, made.length - steps))));
      }),
    );
  });

  test('redo brings back what undo took, step for step', () => {
    fc.assert(
      fc.property(fc.array(arbitraryDecision, { maxLength: 12 }), fc.nat(15), (made, steps) => {
        const back = [...made, ...Array<'undo'>(steps).fill('undo'), ...Array<'redo'>(steps).fill('redo')];
        expect(decisionsOf(back)).toEqual(decisionsOf(made));
      }),
    );
  });

  test('a decision after an undo leaves nothing to redo', () => {
    fc.assert(
      fc.property(arbitraryMoves, arbitraryDecision, (moves, decision) => {
        const state = stateOf([...moves, decision]);
        expect(state.redoTarget).toBeNull();
        expect(decisionsOf([...moves, decision, 'redo'])).toEqual(state.decisions);
      }),
    );
  });

  test('after any moves, undo and then redo change nothing', () => {
    fc.assert(
      fc.property(arbitraryMoves, (moves) => {
        const state = stateOf(moves);
        fc.pre(state.undoTarget !== null);
        expect(decisionsOf([...moves, 'undo', 'redo'])).toEqual(state.decisions);
      }),
    );
  });

  test('work on after a restart: what is left to undo and redo is known from the journal alone', () => {
    fc.assert(
      fc.property(arbitraryMoves, fc.nat(25), (moves, cut) => {
        const saved = JSON.stringify(playMoves(moves.slice(0, cut)));
        const resumed = playMoves(moves.slice(cut), JSON.parse(saved));
        expect(replayJournal(resumed)).toMatchObject({
          decisions: decisionsOf(moves),
          undoTarget: stateOf(moves).undoTarget,
          redoTarget: stateOf(moves).redoTarget,
        });
      }),
    );
  });

  test('no event of one program at one keyboard is idle', () => {
    fc.assert(
      fc.property(arbitraryMoves, (moves) => {
        expect(stateOf(moves).idle).toEqual([]);
      }),
    );
  });

  test('a second undo of the same decision counts for nothing and is named', () => {
    const [decision] = buildEvents([{ kind: 'station-set', clip: 'clip-1', station: 'A' }]);
    if (!decision) throw new Error('one event was asked for');
    const again = [1, 2].map((n) => buildTestEvent(n, { kind: 'undone', target: decision.id }));
    expect(replayJournal([decision, ...again]).idle).toEqual([getTestId(2)]);
  });

  test('an acknowledged redo holds even where another machine’s decision has come between', () => {
    const events = [
      buildTestEvent(0, { kind: 'station-set', clip: 'clip-1', station: 'A' }),
      buildTestEvent(1, { kind: 'undone', target: getTestId(0) }),
      buildTestEvent(2, { kind: 'station-set', clip: 'clip-2', station: 'B' }),
      buildTestEvent(3, { kind: 'redone', target: getTestId(0) }),
    ];
    expect([...replayJournal(events).decisions.stationOf.keys()]).toEqual(['clip-1', 'clip-2']);
  });
});
