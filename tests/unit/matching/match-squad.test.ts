import { describe, expect, test } from 'vitest';
import { getFlagKey } from '../../../src-core/matching/flag.ts';
import { everyFiveMinutes, filmed, flags, match, placed, roles } from './filmed.ts';

describe('a walk as the route says', () => {
  test('has no flag, and every clip counts at its card’s station', () => {
    const result = match('CDEFGAB', everyFiveMinutes('CDEFGAB'));
    expect(flags(result)).toEqual([]);
    expect(result.missing).toEqual([]);
    expect(result.order).toEqual({ kendallTau: { distance: 0, max: 21 }, shareInOrder: 1 });
    expect(result.assignments[1]).toEqual({
      clip: '1D',
      role: 'counts',
      slot: 1,
      station: 'D',
      stationFrom: 'card',
      inOrder: true,
    });
  });

  test('no clips: every slot is missing and nothing is claimed about order', () => {
    const result = match('ABC', []);
    expect(flags(result)).toEqual(['missing 0', 'missing 1', 'missing 2']);
    expect(result.order.shareInOrder).toBeNull();
  });
});

describe('out of order', () => {
  test('two stations swapped: the one filmed first is flagged, against the other', () => {
    const result = match('CDEFGAB', everyFiveMinutes('CDEGFAB'));
    expect(result.flags).toEqual([
      {
        squad: 'plum',
        code: 'out-of-order',
        clip: '3G',
        slot: 4,
        station: 'G',
        against: { clip: '4F', slot: 3, side: 'before' },
      },
    ]);
    expect(result.flags.map(getFlagKey)).toEqual(['out-of-order:plum:3G']);
    expect(result.assignments.map(({ inOrder }) => inOrder)).toEqual([
      true,
      true,
      true,
      false,
      true,
      true,
      true,
    ]);
  });

  test('a station done last that belonged first is the one flagged, as filmed after its neighbour', () => {
    const [flag] = match('ABCDE', everyFiveMinutes('BCDEA')).flags;
    expect(flag).toMatchObject({ clip: '4A', against: { clip: '3E', side: 'after' } });
  });

  test('a known station keeps its own slot wherever it stands; only the smallest set is flagged', () => {
    const result = match('ABCDEF', everyFiveMinutes('FEDCBA'));
    expect(roles(result)).toEqual(['counts 5', 'counts 4', 'counts 3', 'counts 2', 'counts 1', 'counts 0']);
    expect(flags(result)).toHaveLength(5);
  });
});

describe('missing and unknown', () => {
  test('a skipped station is one missing slot', () => {
    const result = match('BCDEFGA', everyFiveMinutes('BCDEGA'));
    expect(result.flags).toEqual([
      { squad: 'plum', code: 'missing', clip: null, slot: 4, station: 'F', candidates: [] },
    ]);
  });

  test('an unknown clip takes the one slot left between its neighbours', () => {
    const result = match('ABCDE', filmed('A', 'B', '?', 'D', 'E'));
    expect(flags(result)).toEqual([]);
    expect(result.assignments[2]).toMatchObject({ slot: 2, station: 'C', stationFrom: 'inferred' });
  });

  test('two slots left and nothing to choose by: unplaced, both named, and a candidate for both', () => {
    const result = match('ABCDE', filmed('A', 'B', '?', 'E'));
    expect(result.flags).toMatchObject([
      {
        code: 'unplaced',
        clip: '2?',
        either: [
          { slot: 2, station: 'C' },
          { slot: 3, station: 'D' },
        ],
      },
      { code: 'missing', slot: 2, candidates: ['2?'] },
      { code: 'missing', slot: 3, candidates: ['2?'] },
    ]);
  });

  test('the squad’s pace chooses between two slots', () => {
    const pace = filmed(['A', 0], ['B', 5], ['?', 10], ['E', 20], ['F', 25], ['G', 30]);
    expect(flags(match('ABCDEFG', pace))).toEqual(['missing 3']);
    const halfway = filmed(['A', 0], ['B', 5], ['?', 12.5], ['E', 20], ['F', 25], ['G', 30]);
    expect(flags(match('ABCDEFG', halfway))).toEqual(['unplaced 2?', 'missing 2', 'missing 3']);
  });

  test('a tablet whose clock is an hour slow is placed as well as any other', () => {
    const slow = filmed(['A', -60], ['B', -55], ['?', -50], ['E', -40], ['F', -35], ['G', -30]);
    expect(flags(match('ABCDEFG', slow))).toEqual(['missing 3']);
  });

  test('a start that is far less certain than the others tells nothing about pace', () => {
    const clips = filmed(['A', 0], ['B', 5], ['?', 10], ['E', 20], ['F', 25], ['G', 30]);
    const doubtful = clips.map((clip) => (clip.clip === '2?' ? { ...clip, uncertaintySeconds: 1800 } : clip));
    expect(flags(match('ABCDEFG', doubtful))).toEqual(['unplaced 2?', 'missing 2', 'missing 3']);
  });

  test('looks choose between two slots, and a near tie of looks does not', () => {
    const withScores = (scores: Record<string, number>) => [
      ...filmed('A', 'B'),
      placed('?', 2, { observation: { known: false, scores } }),
      placed('E', 3),
    ];
    expect(roles(match('ABCDE', withScores({ C: 0.9 })))[2]).toBe('counts 2');
    expect(roles(match('ABCDE', withScores({ C: 0.1 })))[2]).toBe('counts 3');
    expect(roles(match('ABCDE', withScores({ C: 0.6, D: 0.5 })))[2]).toBe('unplaced');
  });

  test('looks that deny the only slot left stop the guess', () => {
    const denied = placed('?', 2, { observation: { known: false, scores: { C: 0 } } });
    const result = match('ABCDE', [...filmed('A', 'B'), denied, placed('D', 3), placed('E', 4)]);
    expect(flags(result)).toEqual(['unplaced 2?', 'missing 2']);
  });

  test('a guess never accuses: where only a slot out of order is free, the clip is unplaced', () => {
    const result = match('ABCDE', everyFiveMinutes('AC?DE'));
    expect(flags(result)).toEqual(['unplaced 2?', 'missing 1']);
    expect(result.flags[0]).toMatchObject({
      either: [
        { slot: 1, station: 'B' },
        { slot: null, station: null },
      ],
    });
  });

  test('a whole walk without cards is read by order alone when the clips are exactly as many', () => {
    expect(roles(match('ABC', filmed('?', '?', '?')))).toEqual(['counts 0', 'counts 1', 'counts 2']);
    expect(roles(match('ABC', filmed('?', '?')))).toEqual(['unplaced', 'unplaced']);
  });
});

describe('retakes', () => {
  const quickSecond = filmed(['A', 0], ['B', 6], ['C', 9], ['C', 11], ['D', 15], ['E', 21], ['F', 25]);

  test('the plan’s rule says which of two takes counts; the other is flagged with it', () => {
    expect(match('ABCDEF', quickSecond, 'last').flags).toEqual([
      { squad: 'plum', code: 'retake', clip: '2C', slot: 2, counts: '3C', returned: false },
    ]);
    expect(flags(match('ABCDEF', quickSecond, 'first'))).toEqual(['retake 3C']);
  });

  test('of three takes two are flagged', () => {
    expect(roles(match('AB', filmed('A', 'A', 'A', 'B')))).toEqual([
      'retake 0',
      'retake 0',
      'counts 0',
      'counts 1',
    ]);
  });

  test('coming back to a station is no order error under either rule: the visit in order counts', () => {
    const result = match('ABCD', filmed('A', 'B', 'A', 'C', 'D'), 'last');
    expect(result.flags).toMatchObject([{ code: 'retake', clip: '2A', counts: '0A', returned: true }]);
    expect(flags(match('ABCD', filmed('A', 'C', 'B', 'C', 'D'), 'first'))).toEqual(['retake 1C']);
  });

  test('two unknown clips at once in one free slot are takes of it', () => {
    const clips = filmed(['A', 0], ['B', 5], ['?', 10], ['?', 11], ['D', 15], ['E', 20], ['F', 25]);
    expect(flags(match('ABCDEF', clips, 'last'))).toEqual(['retake 2?']);
    expect(flags(match('ABCDEF', clips, 'first'))).toEqual(['retake 3?']);
  });

  test('a guessed take never displaces a known one', () => {
    const clips = filmed(['A', 0], ['B', 5], ['?', 6], ['C', 10], ['D', 15], ['E', 20]);
    expect(roles(match('ABCDE', clips, 'last')).slice(1, 3)).toEqual(['counts 1', 'retake 1']);
  });
});

describe('wrong places', () => {
  const route = 'FGABCDE';

  test('a second visit in a free slot’s time is a wrong place there, and the slot is not missing besides', () => {
    const clips = filmed(['F', 0], ['G', 5], ['A', 10], ['B', 15], ['C', 21], ['E', 25], ['E', 30]);
    expect(match(route, clips).flags).toEqual([
      { squad: 'plum', code: 'wrong-place', clip: '5E', slot: 5, expected: 'D', station: 'E' },
    ]);
    expect(match(route, clips).missing).toEqual([]);
  });

  test('the same two clips within a minute are a retake, and the slot is missing', () => {
    const clips = filmed(['F', 0], ['G', 5], ['A', 10], ['B', 15], ['C', 21], ['E', 29], ['E', 30]);
    expect(flags(match(route, clips))).toEqual(['retake 5E', 'missing 5']);
  });

  test('without times both readings are as good: unplaced, both named', () => {
    const result = match('CDEF', filmed('C', 'E', 'E', 'F'));
    expect(result.flags[0]).toMatchObject({
      code: 'unplaced',
      clip: '1E',
      either: [
        { slot: 2, station: 'E' },
        { slot: 1, station: 'E' },
      ],
    });
  });

  test('a station off the route in a free slot’s time is a wrong place; with no slot free it is an extra', () => {
    expect(flags(match('ABCD', filmed('A', 'B', 'X', 'D')))).toEqual(['wrong-place 2X']);
    expect(match('ABCD', filmed('A', 'B', 'X', 'C', 'D')).flags).toEqual([
      { squad: 'plum', code: 'extra', clip: '2X', station: 'X' },
    ]);
  });
});

describe('extras', () => {
  test('an unknown clip from before the walk, with every slot filled, is an extra', () => {
    const clips = filmed(['?', -6], ['A', 0], ['B', 5], ['C', 10], ['D', 15]);
    expect(match('ABCD', clips).flags).toEqual([{ squad: 'plum', code: 'extra', clip: '0?', station: null }]);
  });
});

describe('clips without any order', () => {
  const adrift = (what: string) => placed(what, 9, { hasOrder: false });

  test('a known one fills its slot and is never out of order', () => {
    const result = match('ABC', [...filmed('A', 'C'), adrift('B')]);
    expect(flags(result)).toEqual([]);
    expect(result.order.kendallTau.max).toBe(1);
  });

  test('an unknown one fills the only slot left', () => {
    expect(roles(match('ABC', [adrift('?'), ...filmed('A', 'C')]))[0]).toBe('counts 1');
  });

  test('with two slots left it is unplaced; with none it is an extra', () => {
    expect(roles(match('ABCD', [adrift('?'), ...filmed('A', 'C')]))[0]).toBe('unplaced');
    expect(roles(match('AC', [adrift('?'), ...filmed('A', 'C')]))[0]).toBe('extra');
  });

  test('two of them and one slot left are both unplaced', () => {
    const result = match('ABC', [...filmed('A', 'C'), adrift('?'), placed('?', 8, { hasOrder: false })]);
    expect(flags(result)).toEqual(['unplaced 9?', 'unplaced 8?', 'missing 1']);
  });

  test('a second take without order is the retake, whatever the rule', () => {
    for (const rule of ['first', 'last'] as const) {
      expect(flags(match('ABC', [adrift('B'), ...filmed('A', 'B', 'C')], rule))).toEqual(['retake 9B']);
    }
  });
});

describe('the teacher’s word', () => {
  test('a slot given by hand is final, even against a card', () => {
    const result = match('ABC', [placed('A', 0), placed('A', 1, { slotByTeacher: 1 }), placed('C', 2)]);
    expect(flags(result)).toEqual([]);
    expect(result.assignments[1]).toMatchObject({
      role: 'counts',
      slot: 1,
      station: 'A',
      stationFrom: 'card',
    });
  });

  test('an unknown clip put by hand is known by the teacher’s word, and counts before a card’s clip', () => {
    const byHand = placed('?', 1, { slotByTeacher: 1 });
    const result = match('ABC', [placed('A', 0), byHand, placed('B', 2), placed('C', 3)]);
    expect(result.assignments[1]).toMatchObject({ role: 'counts', station: 'B', stationFrom: 'teacher' });
    expect(flags(result)).toEqual(['retake 2B']);
  });

  test('a slot the route does not have is passed over', () => {
    expect(flags(match('AB', [placed('A', 0, { slotByTeacher: 7 }), placed('B', 1)]))).toEqual([]);
  });
});

describe('odd plans and heaps', () => {
  test('a route that comes back to a station does not break, and takes two clips of it', () => {
    expect(flags(match('ABA', everyFiveMinutes('ABA')))).toEqual([]);
  });

  test('a route walked twice round gives one counting clip a slot, the rest retakes', () => {
    const result = match('ABCDEFGHIJKL', everyFiveMinutes('ABCDEFGHIJKLABCDEFGHIJKL'));
    expect(result.assignments.filter(({ role }) => role === 'counts')).toHaveLength(12);
    expect(result.assignments.filter(({ role }) => role === 'retake')).toHaveLength(12);
    expect(result.order.shareInOrder).toBe(1);
  });
});
