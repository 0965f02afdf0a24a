import { describe, expect, test } from 'vitest';
import { listFootKeys } from '../../../renderer/client/foot-keys.ts';
import { buildMoveTarget, readMoveTarget } from '../../../renderer/client/move-target.ts';
import { buildHash, readRoute } from '../../../renderer/client/route.ts';
import { countPlan, countWay } from '../../../renderer/client/way-counts.ts';
import { KEY_WORDS, nameCombo } from '../../../renderer/text/english/keys.ts';
import { START } from '../../../renderer/text/english/window.ts';
import {
  findClash,
  getCombo,
  isSingleSign,
  KEY_IDS,
  KEY_TABLE,
  readCombo,
} from '../../../renderer/ui/keys/key-table.ts';
import { getBibTone } from '../../../src-core/lesson/pinnie-pattern.ts';
import { buildPupil } from '../marking/harbour.ts';
import { buildFlag, buildView, buildWalk, PLAN } from './walked-lesson.ts';

describe('the address of the window', () => {
  test('leads back to lesson, step and target', () => {
    const route = { lesson: '0123456789abcdef', step: 'line-up', target: 'missing:plum:4' } as const;
    expect(readRoute(buildHash(route))).toEqual(route);
    expect(readRoute(buildHash({ ...route, target: 'a/b %' }))).toMatchObject({ target: 'a/b %' });
  });

  test('asks Line up to move a clip, and for nothing else by the same words', () => {
    const route = { lesson: '0123456789abcdef', step: 'line-up', target: buildMoveTarget('7c1e') } as const;
    expect(readMoveTarget(readRoute(buildHash(route)).target)).toBe('7c1e');
    expect([readMoveTarget('7c1e'), readMoveTarget('missing:plum:4'), readMoveTarget(null)]).toEqual([
      null,
      null,
      null,
    ]);
  });

  test.each([
    '',
    '#/',
    '#/nothing',
    '#/0123456789abcdef/nowhere',
    '#/../../etc',
    '#/0123456789abcdef/line-up/%E0%A4%A',
  ])('%s is read without a fault', (hash) => {
    expect(['bring-in', 'line-up']).toContain(readRoute(hash).step);
  });
});

describe('keys', () => {
  const press = (key: string, more = {}) =>
    readCombo({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...more });

  test('are read the same however a sign is typed', () => {
    expect(press('F', { shiftKey: true })).toBe('shift+f');
    expect(press('?', { shiftKey: true })).toBe('?');
    expect(press('z', { metaKey: true })).toBe('ctrl+z');
    expect(press('Z', { ctrlKey: true, shiftKey: true })).toBe('ctrl+shift+z');
    expect(press('ArrowUp')).toBe('ArrowUp');
  });

  test('no two of one place are bound alike at first', () => {
    for (const place of ['line-up', 'review', 'bring-in', 'scores', 'hand-in'] as const) {
      const combos = KEY_IDS.filter((id) => [place, 'everywhere'].includes(KEY_TABLE[id].place)).map(
        (id) => KEY_TABLE[id].combo,
      );
      expect(new Set(combos).size).toBe(combos.length);
    }
  });

  test('every one stands in the list with its words', () => {
    expect(KEY_IDS.filter((id) => !KEY_WORDS[id])).toEqual([]);
  });

  test('single signs are known as such, so that they can be switched off', () => {
    expect(['f', '?', '['].every(isSingleSign)).toBe(true);
    expect(['ctrl+z', 'Enter', ' ', 'ArrowUp'].some(isSingleSign)).toBe(false);
  });

  test('that another thing has where it works is refused, its own and one of another screen are not', () => {
    expect(findClash('choose-station', 'm', {})).toBe('move-clip');
    expect(findClash('choose-station', 'f', {})).toBe('next-flag');
    expect(findClash('next-flag', 'o', {})).toBe('add-folders');
    expect(findClash('choose-station', 's', {})).toBeNull();
    expect(findClash('choose-station', 'n', {})).toBeNull();
    expect(findClash('choose-station', 'm', { 'move-clip': 'g' })).toBeNull();
    expect(findClash('choose-station', 'g', { 'move-clip': 'g' })).toBe('move-clip');
  });

  test('a binding of the teacher’s own goes first', () => {
    expect(getCombo('play', { play: 'x' })).toBe('x');
    expect(nameCombo('ctrl+shift+z')).toBe('Ctrl+Shift+Z');
    expect(nameCombo('+')).toBe('+');
  });
});

test('the tour has five sentences at most', () => {
  expect(START.tour.length).toBeLessThanOrEqual(5);
});

test('a pinnie’s pattern is darker on light colours and lighter on dark ones', () => {
  expect(getBibTone('#FFFFFF')).toBe('#4d4d4d');
  expect(getBibTone('#000000')).toBe('#c7c7c7');
});

describe('the keys in the foot', () => {
  const extra = buildFlag({ code: 'extra', squad: 'teal', clip: 't2', station: null });
  const empty = buildView([]);

  test('are none of an empty screen', () => {
    for (const step of ['line-up', 'review', 'scores'] as const)
      expect(listFootKeys(empty, step, null)).toEqual([]);
    expect(listFootKeys(empty, 'bring-in', null)).toEqual(['add-folders']);
  });

  test('are of flags only where one waits', () => {
    expect(listFootKeys(buildView(buildWalk()), 'line-up', null)).not.toContain('next-flag');
    expect(listFootKeys(buildView(buildWalk(), [extra]), 'line-up', null)).toContain('next-flag');
  });

  test('are none where nothing is handed in', () => {
    const view = buildView(buildWalk());
    expect(listFootKeys(view, 'hand-in', null)).toContain('write');
    expect(listFootKeys(view, 'hand-in', 'second-marking')).toEqual([]);
    expect(listFootKeys(view, 'hand-in', 'look-after')).toEqual([]);
  });
});

describe('what is left at each step', () => {
  const CLASS = PLAN.squads.map(({ code }) => buildPupil(`k-${code}`, { squad: code }));
  const extra = buildFlag({ code: 'extra', squad: 'teal', clip: 't2', station: null });

  test('nothing is asked of the teacher in a quiet lesson', () => {
    const view = buildView(buildWalk(), [], { pupils: CLASS });
    const counts = { ...countWay(view), plan: countPlan(view, true) };
    expect(Object.values(counts).filter(({ needs }) => needs)).toEqual([]);
  });

  test('the plan is not ready while its class is empty or a squad of it is, before clips and after', () => {
    const plan = {
      ...PLAN,
      stations: PLAN.stations.map((station) => ({ ...station, caution: 'Knees over the toes' })),
      squads: PLAN.squads.map((squad, at) => ({
        ...squad,
        pinnie: { name: squad.code, colour: at === 0 ? '#1F8A86' : '#E0A526' },
      })),
    };
    const count = (pupils: typeof CLASS, hasClips: boolean) => countPlan({ plan, pupils }, hasClips).left;
    expect(count(CLASS, false)).toEqual({ kind: 'ready' });
    for (const hasClips of [false, true]) {
      expect(count([], hasClips)).toEqual({ kind: 'problems', amount: 1 });
      expect(count(CLASS.slice(1), hasClips)).toEqual({ kind: 'problems', amount: 1 });
    }
  });

  test('a flag counts at one step alone', () => {
    const counts = countWay(buildView(buildWalk(), [extra]));
    expect(counts['line-up']).toEqual({ left: { kind: 'flags', amount: 1 }, needs: true });
    expect(counts['bring-in'].needs).toBe(false);
  });

  test('flags of the route do not count while cards are being read', () => {
    const counts = countWay(
      buildView(buildWalk(), [extra], { reading: { state: 'cards', done: 1, total: 6 } }),
    );
    expect(counts['line-up']).toEqual({ left: { kind: 'reading', done: 1, total: 6 }, needs: false });
  });
});
