import { describe, expect, test } from 'vitest';
import {
  type ClockSighting,
  getTabletClock,
  UNCHECKED_CLOCK_SECONDS,
} from '../../../src-core/intake/tablet-clock.ts';

const NOON = Date.parse('2025-05-15T15:00:00Z');
const sighting = (clip: string, behindSeconds: number, doubtSeconds = 0): ClockSighting => ({
  clip,
  trueStartMs: NOON,
  spreadSeconds: 0.5,
  tabletStartMs: NOON - behindSeconds * 1000,
  tabletUncertaintySeconds: doubtSeconds,
});

describe('the correction of a tablet’s clock', () => {
  test('adds what a slow tablet lacks', () => {
    const clock = getTabletClock([sighting('film', 37 * 60)], null);
    expect(clock).toMatchObject({ offsetSeconds: 2220, uncertaintySeconds: 0.5, from: 'clock-film' });
  });

  test('takes away what a fast tablet has too much', () => {
    expect(getTabletClock([sighting('film', -42)], null).offsetSeconds).toBe(-42);
  });

  test('puts the teacher’s word above every film', () => {
    expect(getTabletClock([sighting('film', 37 * 60)], -5)).toMatchObject({
      offsetSeconds: -5,
      from: 'teacher',
    });
  });

  test('admits that an unchecked clock may be off', () => {
    const clock = getTabletClock([], null);
    expect(clock).toEqual({
      offsetSeconds: 0,
      uncertaintySeconds: UNCHECKED_CLOCK_SECONDS,
      from: 'nothing',
      contradicting: [],
    });
  });

  test('believes the surer of two films and names the one that says otherwise', () => {
    const clock = getTabletClock([sighting('vague', 30, 15), sighting('sure', 100)], null);
    expect(clock).toMatchObject({ offsetSeconds: 100, contradicting: ['vague'] });
    expect(getTabletClock([sighting('a', 100), sighting('b', 101.5)], null).contradicting).toEqual([]);
  });
});
