import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildClassCard } from '../../../../renderer/features/review/class-card.ts';
import { explainSilence } from '../../../../renderer/features/review/explain-silence.ts';
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
import { buildFlag } from '../walked-lesson.ts';

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

test('of a photo nothing is said to be watched yet: it shows no movement', () => {
  const photo = { ...firstClip(), holds: 'still' } as const;
  for (const checks of ['exercise', 'reps', 'together'] as const) {
    expect(explainSilence(checks, photo)).toBe('A photo shows no movement; yours to say.');
    expect(explainSilence(checks, { ...photo, holds: 'video' })).toContain('not watched yet');
  }
  expect(explainSilence('judgement', photo)).toBe('Yours alone to say.');
});

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

  test('keeps every hole but those that a decision changed, and says the same as one made anew', () => {
    const before = buildClassCard(lesson);
    const act = findRestAnswered(firstClip(), true);
    const view = decided(...(act ? [act] : []));
    const after = buildClassCard(view, before);
    expect(after.lines).toEqual(buildClassCard(view).lines);
    const holes = (card: typeof before) => card.lines.flatMap((line) => line.holes);
    const known = new Set(holes(before));
    expect(holes(after).filter((hole) => !known.has(hole))).toEqual([
      expect.objectContaining({ squad: 'teal', station: 'A', state: 'inked' }),
    ]);
    expect(after.lines.map((line, at) => line === before.lines[at])).toEqual([false, true, true]);
  });

  test('takes nothing over from a card of another plan', () => {
    const before = buildClassCard(lesson);
    const [first, ...others] = lesson.plan.squads;
    if (!first) throw new Error('the plan has squads');
    const plan = { ...lesson.plan, squads: [...others, first] };
    const after = buildClassCard({ ...lesson, plan }, before);
    expect(after.lines[0]?.holes.map(({ squad }) => squad)).toEqual(['amber', 'teal']);
  });

  test('shows a flag as soon as one waits, and no longer once it is answered', () => {
    const { id } = firstClip();
    const open = buildFlag({ code: 'too-short', clip: id, squad: 'teal', durationSeconds: 1 });
    const before = buildClassCard(lesson);
    const flagged = buildClassCard({ ...lesson, flags: [open] }, before);
    expect(flagged.lines[0]?.holes[0]).toMatchObject({ state: 'flagged', flag: 'too-short' });
    const answer = { settled: 'kept', reason: null } as const;
    const settled = buildClassCard({ ...lesson, flags: [{ ...open, answer }] }, flagged);
    expect(settled.lines).toEqual(before.lines);
  });

  test('shows a flag that is filed under another squad than the clip’s', () => {
    const { id } = firstClip();
    const open = buildFlag({ code: 'handed-in-twice', clip: id, squad: 'amber', alsoIn: ['teal'] });
    const card = buildClassCard({ ...lesson, flags: [open] }, buildClassCard(lesson));
    expect(card.lines[0]?.holes[0]).toMatchObject({
      squad: 'teal',
      state: 'flagged',
      flag: 'handed-in-twice',
    });
    expect(card.lines.flatMap(({ holes }) => holes).filter(({ flag }) => flag !== null)).toHaveLength(1);
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

describe('a key in the moment in which a proposal comes', () => {
  const proposal = {
    criterion: 'together',
    met: false,
    confidence: 0.8,
    reason: { code: 'lanes-unseen', missing: 1 },
  } as const;

  test('confirms what could be seen before, not what has only just come', () => {
    const clip = firstClip();
    const before = clip.proposals;
    const after = { ...clip, proposals: [...before, proposal] };
    expect(findConfirmation(after, before)).toBeNull();
    expect(findRestAnswered(after, true, before)).toMatchObject({ answers: { together: true } });
    expect(findConfirmation(after)).toMatchObject({ answers: { together: false } });
  });
});

describe('the speed', () => {
  test('goes up and down its steps and stays at either end', () => {
    expect([shiftRate(1, 1), shiftRate(1, -1), shiftRate(4, 1), shiftRate(0.25, -1)]).toEqual([
      2, 0.5, 4, 0.25,
    ]);
  });
});
