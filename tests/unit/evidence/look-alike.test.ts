import { describe, expect, test } from 'vitest';
import { compareLooks } from '../../../src-core/evidence/compare-looks.ts';
import { findLookAlike, rememberPlaces } from '../../../src-core/evidence/find-look-alike.ts';
import { buildMedianFrame } from '../../../src-core/evidence/median-frame.ts';
import { describePlace } from '../../../src-core/evidence/place-look.ts';
import { type DrawnPlace, drawPlace } from './draw-place.ts';

const look = (place: DrawnPlace) => describePlace(drawPlace(place));
const STATIONS = ['A', 'B', 'C', 'D', 'E', 'F'];
const label = (change: Partial<DrawnPlace> = {}) =>
  STATIONS.map((station, at) => ({
    clip: `clip ${station}`,
    station,
    look: look({ seed: at + 1, ...change }),
  }));

describe('the picture of what stays', () => {
  test('shows nobody who walks on', () => {
    const yuv = [200, 100, 200] as const;
    const frames = [10, 30, 50, 70, 90].map((x) => drawPlace({ seed: 1, person: { x, yuv } }));
    expect(buildMedianFrame(frames)?.yuv).toEqual(drawPlace({ seed: 1 }).yuv);
  });

  test('is nothing without pictures', () => expect(buildMedianFrame([])).toBeNull());
});

describe('a place’s look', () => {
  test('has seven whole numbers a cell and no picture', () => {
    const { columns, rows, cells } = look({ seed: 1 });
    expect([columns, rows, cells.length]).toEqual([16, 9, 16 * 9 * 7]);
    expect(cells.every(Number.isInteger)).toBe(true);
  });

  test('is no distance from itself and far from another', () => {
    expect(compareLooks(look({ seed: 1 }), look({ seed: 1 }))).toBe(0);
    expect(compareLooks(look({ seed: 1 }), look({ seed: 2 }))).toBeGreaterThan(0.6);
  });

  test('is nearly kept by a step aside and by other light', () => {
    expect(compareLooks(look({ seed: 1 }), look({ seed: 1, right: 8 }))).toBeLessThan(0.1);
    expect(compareLooks(look({ seed: 1 }), look({ seed: 1, light: 14 }))).toBeLessThan(0.1);
  });

  test('is the same way round whichever is compared with which', () => {
    const [one, other] = [look({ seed: 1 }), look({ seed: 3, right: 3 })];
    expect(compareLooks(one, other)).toBeCloseTo(compareLooks(other, one), 10);
  });

  test('of a tablet held upright is laid on the other’s middle', () => {
    const upright = look({ seed: 1, width: 72, height: 128 });
    expect([upright.columns, upright.rows]).toEqual([9, 16]);
    expect(compareLooks(upright, look({ seed: 1 }))).toBeLessThanOrEqual(1);
  });
});

describe('finding the labelled clip that a place resembles', () => {
  const memory = rememberPlaces(label());

  test('names its station and clip, and says for and against', () => {
    const found = findLookAlike(look({ seed: 3, right: 5, light: -9 }), memory);
    expect(found).toMatchObject({ station: 'C', like: 'clip C' });
    expect(found?.scores.C).toBeGreaterThan(0.9);
    expect(found?.scores.A).toBeLessThan(0.1);
  });

  test('says nothing of a place that none of them shows', () => {
    for (let seed = 50; seed < 70; seed++) expect(findLookAlike(look({ seed }), memory)).toBeNull();
  });

  test('says nothing where two labelled stations look alike', () => {
    const twins = rememberPlaces([
      ...label(),
      { clip: 'g', station: 'G', look: look({ seed: 3, right: 8 }) },
    ]);
    expect(findLookAlike(look({ seed: 3, right: 4 }), twins)).toBeNull();
  });

  test('needs three labelled stations to know what chance gives', () => {
    expect(rememberPlaces(label().slice(0, 2)).margin).toBeNull();
    expect(findLookAlike(look({ seed: 1 }), rememberPlaces(label().slice(0, 2)))).toBeNull();
    expect(findLookAlike(look({ seed: 1 }), rememberPlaces([]))).toBeNull();
  });
});
