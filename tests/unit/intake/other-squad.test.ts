import { describe, expect, test } from 'vitest';
import {
  findFilmingSquad,
  findStrayClips,
  nameRecorder,
  type TabletTrace,
} from '../../../src-core/intake/other-squad.ts';

const routes = new Map([
  ['teal', ['A', 'B', 'C']],
  ['moss', ['B', 'C', 'A']],
  ['plum', ['C', 'A', 'B']],
]);

const trace = (clip: string, squad: string, change: Partial<TabletTrace> = {}): TabletTrace => ({
  clip,
  squad,
  recorder: '',
  recorderName: change.recorder ?? '',
  number: null,
  startMs: null,
  durationSeconds: 12,
  uncertaintySeconds: 1,
  station: null,
  pinnieOf: null,
  ...change,
});

const img = (value: number) => ({ series: 'IMG_', value });
const minute = (minutes: number) => minutes * 60_000;

/** Teal films with a Slate, Moss with a Dunlin; two clips each. */
const usual = [
  trace('t1', 'teal', { recorder: 'Slate', station: 'A', number: img(11), startMs: minute(0) }),
  trace('t2', 'teal', { recorder: 'Slate', station: 'B', number: img(12), startMs: minute(5) }),
  trace('m1', 'moss', { recorder: 'Dunlin', station: 'B', number: img(4711), startMs: minute(0) }),
  trace('m2', 'moss', { recorder: 'Dunlin', station: 'C', number: img(4712), startMs: minute(5) }),
];
const strays = (...more: readonly TabletTrace[]) => findStrayClips([...usual, ...more], routes);

describe('a clip that another squad’s tablet filmed', () => {
  test('is told by maker and model, whatever else is compared', () => {
    expect(nameRecorder('Skerry', 'Dunlin 8')).toBe('Skerry Dunlin 8');
    expect(nameRecorder('Skerry', 'SKERRY Dunlin 8')).toBe('SKERRY Dunlin 8');
    expect(nameRecorder('', 'Dunlin 8')).toBe('Dunlin 8');
    const stray = trace('x', 'teal', {
      ...{ recorder: 'Dunlin', recorderName: 'Skerry Dunlin 8' },
      ...{ station: 'A', startMs: minute(10) },
    });
    expect(strays(stray)[0]?.hints[0]).toEqual({ kind: 'recorder', name: 'Skerry Dunlin 8' });
  });

  test('is named with the recorder and the gap it fills', () => {
    const stray = trace('x', 'teal', { recorder: 'Dunlin', station: 'A', startMs: minute(10) });
    expect(strays(stray)).toEqual([
      {
        clip: 'x',
        likely: 'moss',
        hints: [
          { kind: 'recorder', name: 'Dunlin' },
          { kind: 'fills-gap', station: 'A' },
        ],
      },
    ]);
  });

  test('is named by its number and by its own squad filming elsewhere at that time', () => {
    const stray = trace('x', 'teal', { number: img(4713), startMs: minute(5) + 3000 });
    expect(strays(stray).map(({ clip, likely }) => [clip, likely])).toContainEqual(['x', 'moss']);
    const hints = strays(stray).find(({ clip }) => clip === 'x')?.hints;
    expect(hints).toEqual([
      { kind: 'overlap', clip: 't2' },
      { kind: 'name-series', neighbour: 'm2' },
    ]);
  });

  test('is named by its number where the camera has begun again with 0001', () => {
    const lesson = [
      trace('m1', 'moss', { station: 'B', number: img(9998), startMs: minute(0) }),
      trace('x', 'teal', { station: 'A', number: img(1), startMs: minute(10) }),
    ];
    expect(findStrayClips(lesson, routes).map(({ clip, likely }) => [clip, likely])).toContainEqual([
      'x',
      'moss',
    ]);
  });

  test('is not named for one hint alone', () => {
    expect(strays(trace('x', 'teal', { recorder: 'Dunlin', startMs: minute(10) }))).toEqual([]);
    expect(strays(trace('x', 'teal', { station: 'A', startMs: minute(10) }))).toEqual([]);
  });

  test('is not named where its own squad’s tablet or numbers fit as well', () => {
    const borrowed = trace('x', 'teal', {
      recorder: 'Slate',
      number: img(4713),
      station: 'A',
      startMs: minute(10),
    });
    expect(strays(borrowed)).toEqual([]);
    const renumbered = trace('x', 'teal', { recorder: 'Dunlin', number: img(13), station: 'A' });
    expect(strays(renumbered)).toEqual([]);
  });

  test('is not named where two tablets of one make fit alike', () => {
    const plum = [
      trace('p1', 'plum', { recorder: 'Dunlin', station: 'C' }),
      trace('p2', 'plum', { recorder: 'Dunlin', station: 'B' }),
    ];
    expect(strays(...plum, trace('x', 'teal', { recorder: 'Dunlin', station: 'A' }))).toEqual([]);
  });

  test('is not named against starts too uncertain to overlap', () => {
    const vague = trace('x', 'teal', { number: img(4713), startMs: minute(5) + 3000, uncertaintySeconds: 3 });
    expect(strays(vague)).toEqual([]);
  });
});

describe('a clip that several squads handed in', () => {
  const lesson = { traces: usual, routes };
  const twice = (change: Partial<TabletTrace>) =>
    findFilmingSquad(trace('x', '', change), ['teal', 'moss'], lesson);

  test('is the one’s whose tablet it looks like', () => {
    expect(twice({ recorder: 'Dunlin' })).toBe('moss');
    expect(twice({ number: img(13) })).toBe('teal');
  });

  test('is nobody’s where nothing speaks for one, or as much for both', () => {
    expect(twice({})).toBeNull();
    expect(twice({ recorder: 'Dunlin', number: img(13) })).toBeNull();
  });

  test('is never a squad’s that did not hand it in', () => {
    expect(findFilmingSquad(trace('x', '', { recorder: 'Dunlin' }), ['teal', 'plum'], lesson)).not.toBe(
      'moss',
    );
  });
});
