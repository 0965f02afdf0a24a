import { describe, expect, test } from 'vitest';
import { givePathToTray } from '../../../../renderer/features/bring-in/give-to-tray.ts';
import { groupAside } from '../../../../renderer/features/bring-in/set-aside.ts';
import { buildTrays } from '../../../../renderer/features/bring-in/trays.ts';
import { findNextWaiting, findShift, listWaiting } from '../../../../renderer/features/bring-in/waiting.ts';
import { buildClip, buildFlag, buildView, buildWalk, PLAN } from '../walked-lesson.ts';

const kinds = (view: ReturnType<typeof buildView>, squad: string) =>
  buildTrays(view)
    .find((tray) => tray.squad === squad)
    ?.slips.map(({ kind }) => kind);

describe('a tray', () => {
  test('holds a slip for each slot of the route', () => {
    expect(kinds(buildView(buildWalk()), 'teal')).toEqual(['clip', 'clip', 'clip']);
  });

  test('stays open where no clip is, short only when all is read', () => {
    const clips = buildWalk().filter(({ id }) => id !== 't2');
    const gap = (view: ReturnType<typeof buildView>) => buildTrays(view)[0]?.slips[1];
    expect(gap(buildView(clips))).toEqual({ kind: 'gap', slot: 1, isShort: true });
    const reading = { state: 'cards', done: 1, total: 5 } as const;
    expect(gap(buildView(clips, [], { reading }))).toEqual({ kind: 'gap', slot: 1, isShort: false });
  });

  test('is not short where nothing was brought in at all', () => {
    const [tray] = buildTrays(buildView([]));
    expect(tray).toMatchObject({ isEmpty: true, filled: 0, slots: 3 });
    expect(tray?.slips.every((slip) => slip.kind === 'gap' && !slip.isShort)).toBe(true);
  });

  test('tilts what is one too many', () => {
    const retake = buildClip('t9', { squad: 'teal', minute: 16, slot: null, station: 'B' });
    expect(kinds(buildView([...buildWalk(), retake]), 'teal')).toEqual(['clip', 'clip', 'clip', 'extra']);
  });

  test('hatches clips whose pictures are still to be searched', () => {
    const waiting = buildClip(
      't1',
      { squad: 'teal', minute: 5, slot: null, station: null },
      { isSearched: false },
    );
    const reading = { state: 'stamps', done: 0, total: 1 } as const;
    expect(kinds(buildView([waiting], [], { reading }), 'teal')).toEqual(['reading', 'gap', 'gap']);
  });

  test('pencils a station that was inferred', () => {
    const [clip] = buildWalk();
    const inferred = {
      ...clip,
      assignment: { ...clip?.assignment, stationFrom: 'inferred' },
    } as typeof clip & object;
    expect(buildTrays(buildView([inferred]))[0]?.slips[0]).toMatchObject({ kind: 'clip', isGuess: true });
  });
});

describe('what waits', () => {
  const twice = buildFlag({ code: 'handed-in-twice', squad: 'plum', clip: 't1', alsoIn: ['teal'] });

  test('a clip in two folders is offered first to the squad that filmed it', () => {
    const [item] = listWaiting(buildView(buildWalk(), [twice]));
    expect(item?.remedies).toEqual([
      {
        kind: 'whose',
        squad: 'teal',
        acts: [{ kind: 'flag-settled', flag: twice.key, settled: 'kept', reason: null }],
      },
      { kind: 'whose', squad: 'plum', acts: [{ kind: 'clip-moved', clip: 't1', squad: 'plum' }] },
    ]);
  });

  test('a clip that is nobody’s is offered to every squad', () => {
    const stray = buildClip(
      'x1',
      { squad: 'teal', minute: 5, slot: null, station: null },
      { squad: null, aside: 'nobodys' },
    );
    const [item] = listWaiting(buildView([...buildWalk(), stray]));
    expect(item?.key).toBe('nobodys:x1');
    expect(item?.remedies.flatMap((remedy) => ('squad' in remedy ? remedy.squad : []))).toEqual([
      'teal',
      'plum',
    ]);
  });

  test('a tablet that is off by whole hours is offered the correction that fits', () => {
    const off = buildFlag({
      code: 'clock-doubtful',
      squad: 'plum',
      clip: null,
      doubt: 'tablet-clock',
      uncertaintySeconds: Number.POSITIVE_INFINITY,
      shiftSeconds: 3600,
    });
    const waiting = listWaiting(buildView(buildWalk(), [off]));
    expect(waiting[0]?.remedies[0]).toEqual({
      kind: 'use-shift',
      seconds: 3600,
      acts: [{ kind: 'clock-set', squad: 'plum', correctionSeconds: 3600 }],
    });
    expect(findShift(waiting, 'plum')).toBe(3600);
    expect(findShift(waiting, 'teal')).toBeNull();
  });

  test('settled flags and those of the route do not wait here', () => {
    const settled = { ...twice, answer: { settled: 'kept', reason: null } as const };
    const extra = buildFlag({ code: 'extra', squad: 'teal', clip: 't2', station: null });
    expect(listWaiting(buildView(buildWalk(), [settled, extra]))).toEqual([]);
    expect(findNextWaiting([], null)).toBeNull();
  });
});

describe('what is set aside', () => {
  test('comes back by clearing its flag, or by taking the teacher’s word back', () => {
    const outside = buildClip(
      't8',
      { squad: 'teal', minute: -90, slot: null, station: null },
      { aside: 'other-period' },
    );
    const byHand = buildClip(
      't9',
      { squad: 'teal', minute: 9, slot: null, station: null },
      { aside: 'by-teacher' },
    );
    const flag = buildFlag(
      { code: 'outside-period', squad: 'teal', clip: 't8', startMs: 0, period: 'p2' },
      { asks: false },
    );
    const groups = groupAside(buildView([outside, byHand], [flag]));
    expect(groups.map(({ reason, clips }) => [reason, clips[0]?.takeIn])).toEqual([
      ['other-period', [{ kind: 'flag-settled', flag: flag.key, settled: 'cleared', reason: null }]],
      ['by-teacher', [{ kind: 'clip-placed', clip: 't9', slot: null }]],
    ]);
  });

  test('a film of the class clock stays aside', () => {
    const film = buildClip(
      't0',
      { squad: 'teal', minute: 1, slot: null, station: null },
      { aside: 'clock-film' },
    );
    expect(groupAside(buildView([film]))[0]?.clips[0]?.takeIn).toBeNull();
  });
});

describe('what falls on a tray', () => {
  const [teal = null] = PLAN.squads;

  test('is its squad’s where no folder says otherwise', () => {
    expect(givePathToTray('DCIM/IMG_1.MOV', teal, PLAN.squads)).toBe('Teal/DCIM/IMG_1.MOV');
    expect(givePathToTray('IMG_1.MOV', teal, PLAN.squads)).toBe('Teal/IMG_1.MOV');
  });

  test('stays with the squad that its folder names', () => {
    expect(givePathToTray('Plum squad/IMG_1.MOV', teal, PLAN.squads)).toBe('Plum squad/IMG_1.MOV');
    expect(givePathToTray('class/Tablet 2/IMG_1.MOV', teal, PLAN.squads)).toBe('class/Tablet 2/IMG_1.MOV');
  });

  test('is taken as it is beside the trays', () => {
    expect(givePathToTray('IMG_1.MOV', null, PLAN.squads)).toBe('IMG_1.MOV');
  });
});
