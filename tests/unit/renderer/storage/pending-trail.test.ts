import { describe, expect, test } from 'vitest';
import type { OutboxEntry } from '../../../../renderer/storage/outbox-entry.ts';
import { findRedoAct, findUndoAct, foldPending } from '../../../../renderer/storage/pending-trail.ts';
import type { JournalView } from '../../../../src-core/contract/lesson-view.ts';

const JOURNAL: JournalView = {
  undoTarget: 'before',
  undoes: null,
  redoTarget: 'taken-back-before',
  redoes: null,
  lastAt: null,
  handedIn: [],
};

const entry = (id: string, act: OutboxEntry['act']): OutboxEntry => ({
  id,
  lesson: 'l',
  who: 'teacher',
  act,
  acked: null,
});
const note = (id: string) => entry(id, { kind: 'clip-noted', clip: 'c', text: id });

describe('what waits', () => {
  test('stands in the order it was decided', () => {
    expect(foldPending([note('1'), note('2')]).decisions.map(({ id }) => id)).toEqual(['1', '2']);
  });

  test('goes when it is undone, and comes back to its own place', () => {
    const undone = [note('1'), note('2'), entry('3', { kind: 'undone', target: '1' })];
    expect(foldPending(undone).decisions.map(({ id }) => id)).toEqual(['2']);
    const back = [...undone, entry('4', { kind: 'redone', target: '1' })];
    expect(foldPending(back).decisions.map(({ id }) => id)).toEqual(['1', '2']);
  });

  test('reaches back only where it undoes what was recorded before', () => {
    expect(foldPending([note('1'), entry('2', 'undo')]).reachesBack).toBe(false);
    expect(foldPending([entry('1', 'undo')]).reachesBack).toBe(true);
    expect(foldPending([entry('1', { kind: 'undone', target: 'before' })]).reachesBack).toBe(true);
  });
});

describe('the next undo', () => {
  test('names the latest decision that waits, else the journal’s', () => {
    expect(findUndoAct(JOURNAL, [note('1')])).toEqual({ kind: 'undone', target: '1' });
    expect(findUndoAct(JOURNAL, [])).toEqual({ kind: 'undone', target: 'before' });
  });

  test('is the host’s to choose where one that reaches back waits already', () => {
    expect(findUndoAct(JOURNAL, [entry('1', { kind: 'undone', target: 'before' })])).toBe('undo');
  });

  test('is none where nothing was decided', () => {
    expect(findUndoAct({ ...JOURNAL, undoTarget: null }, [])).toBeNull();
  });
});

describe('the next redo', () => {
  test('names what was taken back last', () => {
    expect(findRedoAct(JOURNAL, [])).toEqual({ kind: 'redone', target: 'taken-back-before' });
    expect(findRedoAct(JOURNAL, [note('1'), entry('2', 'undo')])).toEqual({ kind: 'redone', target: '1' });
  });

  test('is none once something new was decided', () => {
    expect(findRedoAct(JOURNAL, [note('1')])).toBeNull();
  });
});
