import fc from 'fast-check';
import { buildEvent, findRedo, findUndo } from '../../../src-core/marking/build-event.ts';
import type { JournalDecision, JournalEvent } from '../../../src-core/marking/journal-event.ts';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import { getTestId } from './harbour.ts';

const clip = fc.constantFrom('clip-1', 'clip-2', 'clip-3');
const squad = fc.constantFrom('plum', 'teal');
const criterion = fc.constantFrom('place', 'reps');

/** Any decision on a few clips, squads and pupils, so that they meet often. */
export const arbitraryDecision: fc.Arbitrary<JournalDecision> = fc.oneof(
  fc.record({
    kind: fc.constant('station-set' as const),
    clip,
    station: fc.option(fc.constantFrom('A', 'B')),
  }),
  fc.record({ kind: fc.constant('clip-moved' as const), clip, squad: fc.option(squad) }),
  fc.record({
    kind: fc.constant('clip-placed' as const),
    clip,
    slot: fc.option(fc.oneof(fc.nat(5), fc.constant('none' as const))),
  }),
  fc.record({
    kind: fc.constant('clock-set' as const),
    squad,
    correctionSeconds: fc.option(fc.integer({ min: -4000, max: 4000 })),
  }),
  fc.record({
    kind: fc.constant('criterion-marked' as const),
    clip,
    criterion,
    met: fc.option(fc.boolean()),
  }),
  fc.record({
    kind: fc.constant('clip-confirmed' as const),
    clip,
    answers: fc.dictionary(criterion, fc.boolean(), { noNullPrototype: true }),
  }),
  fc.record({
    kind: fc.constant('clip-noted' as const),
    clip,
    text: fc.option(fc.constantFrom('mind your backs', 'well counted')),
  }),
  fc.record({
    kind: fc.constant('lanes-set' as const),
    clip,
    lanes: fc.option(
      fc.oneof(
        fc.integer({ min: 1, max: 6 }),
        fc.array(fc.constantFrom(0.25, 0.6), { minLength: 1, maxLength: 3 }),
      ),
    ),
  }),
  fc.record({
    kind: fc.constant('flag-settled' as const),
    flag: fc.constantFrom('missing:plum:1', 'extra:teal:clip-2'),
    settled: fc.option(fc.constantFrom('kept' as const, 'cleared' as const)),
    reason: fc.option(fc.constant('seen on film')),
  }),
  fc.record({
    kind: fc.constant('squad-marked' as const),
    squad,
    criterion: fc.constant('care'),
    points: fc.option(fc.nat(2)),
  }),
  fc.record({
    kind: fc.constant('attendance-set' as const),
    pupil: fc.constantFrom('k-1', 'k-2'),
    attendance: fc.option(fc.constantFrom('present' as const, 'absent' as const, 'late' as const)),
    arrived: fc.option(fc.constant('10:55')),
  }),
  fc.record({
    kind: fc.constant('points-overridden' as const),
    of: fc.oneof(
      fc.record({ type: fc.constant('pupil' as const), pupil: fc.constant('k-1') }),
      fc.record({ type: fc.constant('squad' as const), squad }),
      fc.record({ type: fc.constant('clip' as const), clip }),
    ),
    change: fc.option(
      fc.record({ type: fc.constant('by' as const), points: fc.integer({ min: -100, max: 100 }) }),
    ),
    reason: fc.constant('helped others'),
  }),
);

/** What somebody at the keyboard may do: decide, undo or redo. */
export type Move = JournalDecision | 'undo' | 'redo';

/** Any sequence of moves. */
export const arbitraryMoves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.oneof(
    { weight: 3, arbitrary: arbitraryDecision },
    { weight: 1, arbitrary: fc.constant('undo' as const) },
    { weight: 1, arbitrary: fc.constant('redo' as const) },
  ),
  { maxLength: 25 },
);

/**
 * The journal of a sequence of moves, on top of an earlier one; the clock jumps about, and moves without effect
 * leave no line.
 */
export function playMoves(
  moves: readonly Move[],
  earlier: readonly JournalEvent[] = [],
): readonly JournalEvent[] {
  const events = [...earlier];
  for (const [index, move] of moves.entries()) {
    const state = replayJournal(events);
    const stamp = {
      id: getTestId(events.length),
      nowMs: Date.parse('2025-05-15T14:00:00Z') + ((index * 37) % 11) * 1000,
      who: 'teacher',
    };
    const event =
      move === 'undo'
        ? findUndo(state, stamp)
        : move === 'redo'
          ? findRedo(state, stamp)
          : buildEvent(state, move, stamp);
    if (event) events.push(event);
  }
  return events;
}
