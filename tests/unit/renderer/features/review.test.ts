import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildClassCard } from '../../../../renderer/features/review/class-card.ts';
import type { ClipEvidence } from '../../../../renderer/features/review/clip-evidence.ts';
import { buildCountSheet, findLineAt, getShareOf } from '../../../../renderer/features/review/count-sheet.ts';
import { drawEvidence } from '../../../../renderer/features/review/evidence-drawing.ts';
import { shiftRate } from '../../../../renderer/features/review/film-control.ts';
import {
  findBefore,
  findFirstLeft,
  findNextFlagged,
  findNextLeft,
  listComparable,
  listQueue,
} from '../../../../renderer/features/review/review-queue.ts';
import {
  findConfirmation,
  findRestAnswered,
  flip,
  getEarnings,
  isInked,
  listCriteria,
} from '../../../../renderer/features/review/score-sheet.ts';
import { showPending } from '../../../../renderer/storage/show-pending.ts';
import type { ClipView, LessonView } from '../../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../../src-core/marking/journal-event.ts';
import { openDeskForWindows } from '../storage/open-windows.ts';

let desk: Awaited<ReturnType<typeof openDeskForWindows>>;
let lesson: LessonView;

beforeAll(async () => {
  desk = await openDeskForWindows();
  const session = await desk.getDesk().lessons.find(desk.lesson);
  if (!session) throw new Error('the lesson is open');
  lesson = session.getView();
});

afterAll(() => desk.close());

const decided = (...acts: readonly JournalAct[]): LessonView =>
  showPending(
    lesson,
    acts.map((act, at) => ({ id: String(at), lesson: lesson.lesson, who: 't', act, acked: null })),
  );

const names = (queue: ReturnType<typeof listQueue>) =>
  queue.map(({ squad, station }) => `${squad} ${station}`);

function firstClip(view: LessonView = lesson): ClipView {
  const [first] = listQueue(view, 'squads');
  if (!first) throw new Error('a clip counts');
  return first.clip;
}

describe('the queue', () => {
  test('goes squad by squad in the order of the routes', () => {
    expect(names(listQueue(lesson, 'squads'))).toEqual([
      ...['teal A', 'teal B', 'teal C'],
      ...['amber B', 'amber C', 'amber A'],
    ]);
  });

  test('goes station by station across squads', () => {
    expect(names(listQueue(lesson, 'stations'))).toEqual([
      ...['teal A', 'amber A', 'teal B', 'amber B', 'teal C', 'amber C'],
    ]);
  });

  test('leads on to the next clip that is not inked, round to the first, and then to none', () => {
    const confirm = (clip: ClipView) => findRestAnswered(clip, true) ?? [];
    const queue = listQueue(lesson, 'squads');
    const inked = decided(...queue.slice(1).flatMap(({ clip }) => confirm(clip)));
    const after = listQueue(inked, 'squads');
    expect(findNextLeft(after, queue[3]?.clip.id ?? '')?.clip.id).toBe(queue[0]?.clip.id);
    expect(findFirstLeft(after)?.clip.id).toBe(queue[0]?.clip.id);
    const all = listQueue(decided(...queue.flatMap(({ clip }) => confirm(clip))), 'squads');
    expect(findNextLeft(all, queue[0]?.clip.id ?? '')).toBeNull();
    expect(findFirstLeft(all)).toBeNull();
  });

  test('goes back to the clip before, and nowhere from the first', () => {
    const queue = listQueue(lesson, 'squads');
    expect(findBefore(queue, queue[1]?.clip.id ?? '')).toBe(queue[0]);
    expect(findBefore(queue, queue[0]?.clip.id ?? '')).toBeNull();
  });

  test('finds no flag where none is open', () => {
    expect(findNextFlagged(listQueue(lesson, 'flagged'), null)).toBeNull();
  });

  test('compares a clip with the other squads’ of its station, itself first', () => {
    const queue = listQueue(lesson, 'squads');
    const own = queue.find(({ squad, station }) => squad === 'amber' && station === 'B');
    const compared = listComparable(queue, own?.clip.id ?? '');
    expect(names(compared)).toEqual(['amber B', 'teal B']);
  });
});

describe('the class card', () => {
  test('has a hole for every squad at every station, and counts what is left', () => {
    const card = buildClassCard(lesson);
    expect(card.lines.map(({ station, left }) => [station, left])).toEqual([
      ['A', 2],
      ['B', 2],
      ['C', 2],
    ]);
    expect([card.inked, card.left, card.missing]).toEqual([0, 6, 0]);
  });

  test('is punched as clips are inked', () => {
    const act = findRestAnswered(firstClip(), true);
    expect(buildClassCard(decided(...(act ? [act] : []))).inked).toBe(1);
  });

  test('stands open before clips are read', () => {
    const card = buildClassCard({ ...lesson, squadScores: [], flags: [] });
    expect(card.lines.flatMap(({ holes }) => holes).every(({ state }) => state === 'gone')).toBe(true);
  });
});

describe('confirming', () => {
  test('is refused while a criterion has no answer', () => {
    expect(findConfirmation(firstClip())).toBeNull();
  });

  test('makes every answer shown the teacher’s own', () => {
    const view = decided({
      kind: 'criterion-marked',
      clip: firstClip().id,
      criterion: 'together',
      met: false,
    });
    expect(findConfirmation(firstClip(view))).toMatchObject({ answers: { place: true, together: false } });
  });

  test('with one answer to the rest leaves what is pencilled as it is', () => {
    expect(findRestAnswered(firstClip(), false)).toMatchObject({ answers: { place: true, together: false } });
    expect(findRestAnswered(firstClip(), true)).toMatchObject({ answers: { place: true, together: true } });
  });

  test('of a clip that counts for nothing is nothing', () => {
    expect(findRestAnswered({ ...firstClip(), criteria: null }, true)).toBeNull();
    expect(isInked({ ...firstClip(), criteria: null })).toBe(false);
  });

  test('flipping turns round what is shown, and answers an open one with yes', () => {
    const clip = firstClip();
    const [place, together] = clip.criteria ?? [];
    if (!place || !together) throw new Error('two criteria');
    expect(flip(clip, place)).toMatchObject({ met: false });
    expect(flip(clip, together)).toMatchObject({ met: true });
  });

  test('says which criteria are open, and what stands against the point', () => {
    const lines = listCriteria(lesson.plan, firstClip());
    const earnings = getEarnings(lines, { points: 0, max: 1, isLost: false });
    expect(earnings).toMatchObject({ open: ['Together'], unmet: [], isInked: false });
  });
});

const EVIDENCE: ClipEvidence = {
  reps: {
    count: 2,
    timesSeconds: [1.5, 2.5],
    spanSeconds: [0.6, 2.5],
    trace: { rateHz: 10, signal: Array.from({ length: 30 }, (_, at) => Math.sin(at)) },
  },
  unison: {
    score: 0.8,
    lanes: [
      { x: 0.2, lagSeconds: 0, repLagsSeconds: [0, 0] },
      { x: 0.7, lagSeconds: 0.6, repLagsSeconds: [0.6, null] },
    ],
    windows: [{ fromSeconds: 0, toSeconds: 3, score: 0.8 }],
  },
};

describe('the count sheet', () => {
  test('shows evenly spaced stills, and says so, where reps were not counted', () => {
    const sheet = buildCountSheet({ ...firstClip(), durationSeconds: 10 });
    expect(sheet.without).toBe('not-counted');
    expect(sheet.lines.map(({ atSeconds }) => atSeconds)).toEqual([
      0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5,
    ]);
    expect(sheet.lines.every(({ number }) => number === null)).toBe(true);
  });

  test('tells no reps found from not counted', () => {
    const none = { reps: { count: null, timesSeconds: [], spanSeconds: null }, unison: null };
    expect(buildCountSheet({ ...firstClip(), durationSeconds: 10 }, none).without).toBe('none-found');
  });

  test('has nothing to count in for a photo', () => {
    expect(buildCountSheet({ ...firstClip(), durationSeconds: null })).toMatchObject({
      lines: [],
      without: 'no-length',
    });
  });

  test('has a line a rep and folds what lies before', () => {
    const sheet = buildCountSheet({ ...firstClip(), durationSeconds: 2.9 }, EVIDENCE);
    expect(sheet.lines.map(({ number, fromSeconds, toSeconds }) => [number, fromSeconds, toSeconds])).toEqual(
      [
        [1, 0.6, 1.5],
        [2, 1.5, 2.5],
      ],
    );
    expect(sheet.folds).toEqual([{ kind: 'before', fromSeconds: 0, toSeconds: 0.6 }]);
  });

  test('finds the line and the height of a moment', () => {
    const sheet = buildCountSheet({ ...firstClip(), durationSeconds: 2.9 }, EVIDENCE);
    expect([findLineAt(sheet, 0.2), findLineAt(sheet, 1), findLineAt(sheet, 2)]).toEqual([-1, 0, 1]);
    expect([getShareOf(sheet, 0), getShareOf(sheet, 2), getShareOf(sheet, 2.8)]).toEqual([0, 0.75, 1]);
  });

  test('hangs a late lane’s mark lower and rings a rep that a lane left out', () => {
    const clip = { ...firstClip(), durationSeconds: 2.9 };
    const sheet = buildCountSheet(clip, EVIDENCE);
    const drawing = drawEvidence(clip, sheet, 0.35, EVIDENCE);
    const looks = drawing.marks.map(({ lane, rep, look }) => [lane, rep, look]);
    expect(looks).toEqual([
      [0, 0, 'on'],
      [0, 1, 'on'],
      [1, 0, 'late'],
      [1, 1, 'gone'],
    ]);
    const [onBeat, , late] = drawing.marks;
    expect(late?.top).toBeGreaterThan(onBeat?.top ?? 1);
    expect(drawing.trace).toMatch(/^M/);
  });

  test('draws nothing where nothing was measured', () => {
    const clip = { ...firstClip(), durationSeconds: 10 };
    expect(drawEvidence(clip, buildCountSheet(clip), 0.35)).toEqual({
      trace: '',
      marks: [],
      lanes: [],
      unison: '',
      score: null,
    });
  });
});

describe('the speed', () => {
  test('goes up and down its steps and stays at either end', () => {
    expect([shiftRate(1, 1), shiftRate(1, -1), shiftRate(4, 1), shiftRate(0.25, -1)]).toEqual([
      2, 0.5, 4, 0.25,
    ]);
  });
});
