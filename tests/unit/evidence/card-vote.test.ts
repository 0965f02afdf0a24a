import { describe, expect, test } from 'vitest';
import { type CardReading, isCardSettled, voteCards } from '../../../src-core/evidence/card-vote.ts';
import { formatClockCard, formatStationCard } from '../../../src-core/lesson/card-text.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';

const stations: Plan['stations'] = ['A', 'B', 'C'].map((code) => ({
  code,
  place: `Berth ${code}`,
  exercise: 'Capstan turns',
  reps: 10,
  counting: 'cycle',
}));

const plan = {
  lesson: {
    code: 'HARBOUR',
    revision: 2,
    title: 'Harbour circuit',
    school: 'Quayside School',
    className: '7B',
    date: '2025-05-15',
    period: 'p3',
  },
  stations,
};

function card(station: string, revision = 2, lesson = 'HARBOUR'): string {
  return formatStationCard({ lesson, station, revision });
}

function read(text: string, ...atSeconds: number[]): CardReading[] {
  return atSeconds.map((at) => ({ text, atSeconds: at }));
}

describe('the station', () => {
  test('is the one that the card names, with its pictures counted', () => {
    const { station, problems, foreign } = voteCards(read(card('B'), 0.4, 0.2, 0.6), plan);
    expect(station).toEqual({ code: 'B', revision: 2, firstSeenSeconds: 0.2, frames: 3 });
    expect([problems, foreign]).toEqual([[], []]);
  });

  test('is unknown where no code was read', () => {
    expect(voteCards([], plan)).toEqual({ station: null, clock: null, foreign: [], problems: [] });
  });

  test('is the more frequent of two, and the other is reported', () => {
    const { station, problems } = voteCards([...read(card('A'), 0, 0.2, 0.4), ...read(card('C'), 9)], plan);
    expect(station?.code).toBe('A');
    const seen = [
      { code: 'A', frames: 3 },
      { code: 'C', frames: 1 },
    ];
    expect(problems).toEqual([{ code: 'cards-disagree', taken: 'A', stations: seen }]);
  });

  test('is nobody’s where two are level, however the readings are ordered', () => {
    const readings = [...read(card('A'), 0, 0.2), ...read(card('C'), 0.4, 0.6), ...read(card('B'), 9)];
    for (const order of [readings, readings.toReversed()]) {
      const { station, problems } = voteCards(order, plan);
      expect(station).toBeNull();
      expect(problems).toMatchObject([{ code: 'cards-disagree', taken: null }]);
    }
  });

  test('is counted once a picture, though the picture shows its card twice', () => {
    expect(voteCards(read(card('A'), 0.2, 0.2), plan).station?.frames).toBe(1);
  });

  test('is the same with a web address before the code', () => {
    const readings = [...read(card('A'), 0.2), ...read(`https://harbour.example/a#${card('A')}`, 0.4)];
    expect(voteCards(readings, plan).station).toMatchObject({ code: 'A', firstSeenSeconds: 0.2, frames: 2 });
  });
});

describe('codes of others are reported and ignored', () => {
  test.each([
    ['another lesson’s card', card('A', 2, 'ISLAND'), 'other-lesson'],
    ['a card from an earlier print', card('A', 1), 'other-revision'],
    ['a station that the plan does not have', card('Z'), 'unknown-station'],
    ['a lunch menu', 'https://harbour.example/menu', 'not-ours'],
  ])('%s', (_, text, kind) => {
    const { station, foreign } = voteCards([...read(text, 0, 0.2, 0.4), ...read(card('B'), 0.2)], plan);
    expect(foreign).toEqual([{ text, kind, firstSeenSeconds: 0, frames: 3 }]);
    expect(station?.code).toBe('B');
  });

  test('and a long one is cut', () => {
    expect(voteCards(read('x'.repeat(5000), 0), plan).foreign[0]?.text).toHaveLength(200);
  });
});

describe('the class clock', () => {
  const trueStartMs = Date.UTC(2025, 4, 15, 13, 47, 3, 400);
  const film = (...atSeconds: number[]) =>
    atSeconds.flatMap((at) => read(formatClockCard(trueStartMs + at * 1000), at));

  test('tells the true start to within half a second from a single picture', () => {
    const { clock } = voteCards(film(0.2), plan);
    expect(Math.abs((clock?.trueStartMs ?? 0) - trueStartMs)).toBeLessThanOrEqual(500);
    expect(clock?.spreadSeconds).toBe(0.5);
  });

  test('and better from pictures over several seconds', () => {
    const { clock } = voteCards(film(...Array.from({ length: 16 }, (_, at) => at / 5)), plan);
    expect(Math.abs((clock?.trueStartMs ?? 0) - trueStartMs)).toBeLessThanOrEqual(150);
    expect(clock?.readings).toHaveLength(16);
    expect(clock?.spreadSeconds).toBeGreaterThanOrEqual(0.5);
    expect(clock?.spreadSeconds).toBeLessThan(0.65);
  });

  test('is not believed when it stands still, as on a photo', () => {
    const { clock, problems } = voteCards(read(formatClockCard(trueStartMs), 0, 0.4, 2.4), plan);
    expect(clock).toBeNull();
    expect(problems).toMatchObject([{ code: 'clock-card-stands', spreadSeconds: 1.2 }]);
  });

  test('stands beside a station’s card without disturbing it', () => {
    const verdict = voteCards([...film(0, 0.2), ...read(card('C'), 2, 2.2)], plan);
    expect(verdict.station?.code).toBe('C');
    expect(verdict.clock?.readings).toHaveLength(2);
    expect(verdict.problems).toEqual([]);
  });
});

describe('a search may end early', () => {
  test.each([
    ['two pictures agree', read(card('A'), 0, 0.2), true],
    ['one picture shows the card', read(card('A'), 0), false],
    ['one picture shows it twice', read(card('A'), 0, 0), false],
    ['two stations were seen', [...read(card('A'), 0, 0.2), ...read(card('B'), 0.4)], false],
    [
      'the class clock was seen too',
      [...read(card('A'), 0, 0.2), ...read(formatClockCard(9e11), 0.4)],
      false,
    ],
    ['only the class clock was seen', read(formatClockCard(9e11), 0, 0.2), false],
    ['a foreign code hangs beside the card', [...read(card('A'), 0, 0.2), ...read('menu', 0, 0.2)], true],
    ['nothing was seen', [], false],
  ])('%s: %o', (_, readings, expected) => {
    expect(isCardSettled(readings)).toBe(expected);
  });
});
