import { describe, expect, test } from 'vitest';
import { buildLessonNames } from '../../../../renderer/client/lesson-names.ts';
import { buildPlaces } from '../../../../renderer/features/line-up/by-place.ts';
import { findChosen, findNextFlag } from '../../../../renderer/features/line-up/chosen.ts';
import { buildClockAxis } from '../../../../renderer/features/line-up/clock-axis.ts';
import { listLineRemedies } from '../../../../renderer/features/line-up/line-remedies.ts';
import { listLookAlikes } from '../../../../renderer/features/line-up/look-alikes.ts';
import { buildLoom } from '../../../../renderer/features/line-up/loom.ts';
import { findMeetings } from '../../../../renderer/features/line-up/meetings.ts';
import { buildMoveActs } from '../../../../renderer/features/line-up/move-acts.ts';
import { nameAskedClip, nameTicket } from '../../../../renderer/features/line-up/ticket-words.ts';
import { findTicket } from '../../../../renderer/features/line-up/walk-tickets.ts';
import type { LessonView } from '../../../../src-core/contract/lesson-view.ts';
import { buildClip, buildFlag, buildView, buildWalk } from '../walked-lesson.ts';

const weave = (view: LessonView) => {
  const axis = buildClockAxis(view);
  return { axis, columns: buildLoom(view, axis) };
};

const missing = buildFlag({
  code: 'missing',
  squad: 'plum',
  clip: null,
  slot: 2,
  station: 'A',
  candidates: [],
});
const swapped = buildFlag({
  code: 'out-of-order',
  squad: 'teal',
  clip: 't2',
  slot: 1,
  station: 'B',
  against: { clip: 't1', slot: 0, side: 'before' },
});

describe('the loom', () => {
  test('is quiet where everything is in order', () => {
    const { columns } = weave(buildView(buildWalk()));
    expect(columns.map(({ squad, filled }) => [squad, filled])).toEqual([
      ['teal', 3],
      ['plum', 3],
    ]);
    const looks = columns.flatMap(({ tickets, slots }) => [...tickets, ...slots]).map(({ look }) => look);
    expect(new Set(looks)).toEqual(new Set(['quiet']));
  });

  test('shows an open flag hot, and an answered one in ink', () => {
    const open = weave(buildView(buildWalk(), [swapped, missing])).columns;
    expect(open[0]?.tickets[1]).toMatchObject({ look: 'hot', flag: 'out-of-order' });
    expect(open[1]?.slots[2]?.look).toBe('hot');
    const answer = { settled: 'kept', reason: null } as const;
    const kept = weave(
      buildView(buildWalk(), [
        { ...swapped, answer },
        { ...missing, answer },
      ]),
    ).columns;
    expect(kept[0]?.tickets[1]?.look).toBe('kept');
    expect(kept[1]?.slots[2]?.look).toBe('kept');
  });

  test('shows no flag of the route while cards are still being read', () => {
    const reading = { state: 'cards', done: 2, total: 6 } as const;
    const { columns } = weave(buildView(buildWalk(), [swapped, missing], { reading }));
    expect(columns[0]?.tickets[1]?.look).toBe('quiet');
    expect(columns[1]?.slots[2]?.look).toBe('quiet');
  });

  test('stands a clip without a time between its neighbours', () => {
    const clips = buildWalk().map((clip) =>
      clip.id === 't2' ? buildClip('t2', { squad: 'teal', minute: null, slot: 1, station: 'B' }) : clip,
    );
    const [first, undated, last] = weave(buildView(clips)).columns[0]?.tickets ?? [];
    expect(undated).toMatchObject({ startMs: null, isDoubtful: true });
    expect(undated?.percent).toBeCloseTo(((first?.percent ?? 0) + (last?.percent ?? 0)) / 2, 6);
  });

  test('leaves out what was not filmed in the lesson', () => {
    const other = buildClip(
      't9',
      { squad: 'teal', minute: -60, slot: null, station: null },
      { aside: 'other-period' },
    );
    expect(weave(buildView([...buildWalk(), other])).columns[0]?.tickets).toHaveLength(3);
  });
});

describe('two squads at one station', () => {
  const together = buildClip('p1', { squad: 'plum', minute: 5.4, slot: 0, station: 'A' });

  test('are tied', () => {
    const clips = buildWalk().map((clip) => (clip.id === 'p1' ? together : clip));
    const meetings = findMeetings(weave(buildView(clips)).columns);
    expect(
      meetings.map(({ station, left, right }) => [station, left.ticket.clip.id, right.ticket.clip.id]),
    ).toEqual([['A', 't1', 'p1']]);
  });

  test('are not tied when one comes after the other has gone', () => {
    const later = buildClip('p1', { squad: 'plum', minute: 6, slot: 0, station: 'A' });
    const clips = buildWalk().map((clip) => (clip.id === 'p1' ? later : clip));
    expect(findMeetings(weave(buildView(clips)).columns)).toEqual([]);
  });

  test('are not tied by a clip whose time is doubted', () => {
    const doubted = { ...together, time: { ...together.time, doubt: 'weak-source' } } as typeof together;
    const clips = buildWalk().map((clip) => (clip.id === 'p1' ? doubted : clip));
    expect(findMeetings(weave(buildView(clips)).columns)).toEqual([]);
  });
});

describe('by place', () => {
  test('says who was due and came then, at another time, or not at all', () => {
    const clips = buildWalk().filter(({ id }) => id !== 'p3');
    const { axis, columns } = weave(buildView(clips, [missing]));
    const [placeA] = buildPlaces(buildView(clips), columns, axis);
    expect(placeA?.due.map(({ squads }) => squads)).toEqual([
      [{ squad: 'teal', seen: 'then' }],
      [],
      [{ squad: 'plum', seen: 'never' }],
    ]);
    const early = buildWalk().map((clip) =>
      clip.id === 'p3' ? buildClip('p3', { squad: 'plum', minute: 1, slot: 2, station: 'A' }) : clip,
    );
    const turned = weave(buildView(early));
    expect(buildPlaces(buildView(early), turned.columns, turned.axis)[0]?.due[2]?.squads).toEqual([
      { squad: 'plum', seen: 'else' },
    ]);
  });
});

describe('going from ticket to ticket', () => {
  const { columns } = weave(buildView(buildWalk()));

  test.each([
    [null, 'down', 't1'],
    ['t1', 'down', 't2'],
    ['t1', 'up', undefined],
    ['t2', 'right', 'p2'],
    ['p3', 'left', 't3'],
    ['p3', 'right', undefined],
  ] as const)('from %s %s leads to %s', (from, step, to) => {
    expect(findTicket(columns, from, step)?.clip.id).toBe(to);
  });
});

describe('what the teacher has before them', () => {
  const view = buildView(buildWalk(), [swapped, missing]);
  const { columns } = weave(view);

  test('is the first open flag, where nothing is asked for', () => {
    expect(findChosen(view, columns, null)).toMatchObject({ flag: { key: swapped.key }, clip: { id: 't2' } });
  });

  test('is the clip that is asked for, flag or none', () => {
    expect(findChosen(view, columns, 'p1')).toMatchObject({ flag: null, clip: { id: 'p1' } });
    expect(findChosen(view, columns, 't2').flag?.key).toBe(swapped.key);
  });

  test('goes on to the next flag, round and round', () => {
    expect(findNextFlag(view, swapped)?.key).toBe(missing.key);
    expect(findNextFlag(view, missing)?.key).toBe(swapped.key);
    expect(findNextFlag(buildView(buildWalk()), null)).toBeNull();
    expect(findNextFlag(buildView(buildWalk(), [swapped]), swapped)).toBeNull();
  });
});

describe('moving a clip', () => {
  const [clip] = buildWalk();
  if (!clip) throw new Error('a walk has clips');

  test('into another slot is one act', () => {
    expect(buildMoveActs(clip, 'teal', 2)).toEqual([{ kind: 'clip-placed', clip: 't1', slot: 2 }]);
  });

  test('to another squad’s slot is two', () => {
    expect(buildMoveActs(clip, 'plum', 1).map(({ kind }) => kind)).toEqual(['clip-moved', 'clip-placed']);
  });

  test('to where it is is none', () => {
    expect(buildMoveActs(clip, 'teal', 0)).toEqual([]);
    expect(buildMoveActs(clip, 'teal', null)).toEqual([]);
  });

  test('takes back one that was set aside', () => {
    expect(buildMoveActs({ ...clip, aside: 'by-teacher' }, 'teal', 0)).toHaveLength(1);
  });
});

test('a clip is asked about by whose it is and when it was filmed, else by its number', () => {
  const view = buildView(buildWalk());
  const names = buildLessonNames(view, 'en-GB');
  const clip = { squad: 'teal', time: view.clips[0]?.time ?? null, position: 2 };
  expect(nameAskedClip(clip, names)).toMatch(/^Teal’s clip of 10:4\d$/);
  expect(nameAskedClip({ ...clip, time: null }, names)).toBe('Teal’s clip 3');
  expect(nameAskedClip({ ...clip, time: null, position: null }, names)).toBe('this clip of Teal’s');
  expect(nameAskedClip({ squad: null, time: null, position: null }, names)).toBe('this clip');
});

test('a photo on the loom is not called a clip that is too short', () => {
  const photo = buildFlag({ code: 'too-short', squad: 'teal', clip: 't1', durationSeconds: 0 });
  const clips = buildWalk().map((clip) => (clip.id === 't1' ? ({ ...clip, holds: 'still' } as const) : clip));
  const view = buildView(clips, [photo]);
  const tickets = weave(view).columns.flatMap((column) => column.tickets);
  const ticket = tickets.find(({ clip }) => clip.id === 't1');
  expect(ticket && nameTicket(ticket, buildLessonNames(view, 'en-GB'))).toMatch(/, a photo$/);
});

test('a missing clip can be one of the candidates', () => {
  const found = buildFlag({
    code: 'missing',
    squad: 'plum',
    clip: null,
    slot: 2,
    station: 'A',
    candidates: ['p9'],
  });
  expect(listLineRemedies(found)[0]).toEqual({
    kind: 'use-clip',
    clip: 'p9',
    acts: [{ kind: 'clip-placed', clip: 'p9', slot: 2 }],
  });
});

test('look-alikes are clips whose place is sure, never the clip itself nor an inferred one', () => {
  const guess = buildClip('t2', { squad: 'teal', minute: 15, slot: 1, station: 'B' });
  const inferred = { ...guess, assignment: { ...guess.assignment, stationFrom: 'inferred' } } as typeof guess;
  const view = buildView([...buildWalk().filter(({ id }) => id !== 't2'), inferred]);
  const [now, ...others] = listLookAlikes(view, inferred);
  expect(now).toMatchObject({ station: 'B', isNow: true, shows: { id: 'p1' } });
  expect(others.map(({ station, shows }) => [station, shows?.id])).toEqual([
    ['A', 't1'],
    ['C', 't3'],
  ]);
});
