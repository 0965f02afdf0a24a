import { describe, expect, test } from 'vitest';
import { findFileNameDate } from '../../../src-core/intake/file-name-date.ts';

const local = (text: string, meaning = 'start') => ({ kind: 'local', local: text, meaning });

describe('names that devices give', () => {
  test.each([
    ['VID_20260302_090506.mp4', '2026-03-02T09:05:06'],
    ['VID_20260302_090506~2.mp4', '2026-03-02T09:05:06'],
    ['VID_20260302_090506_HDR.mp4', '2026-03-02T09:05:06'],
    ['IMG_20260302_090506.jpg', '2026-03-02T09:05:06'],
    ['VID20260302090506.mp4', '2026-03-02T09:05:06'],
    ['IMG_20260302_090506789.jpg', '2026-03-02T09:05:06'],
    ['20260302_090506.mp4', '2026-03-02T09:05:06'],
    ['20260302_090506(0).mp4', '2026-03-02T09:05:06'],
    ['WIN_20260302_09_05_06_Pro.mp4', '2026-03-02T09:05:06'],
  ])('%s: the local start', (name, expected) => {
    expect(findFileNameDate(name)).toEqual(local(expected));
  });

  test('PXL names are UTC, to the millisecond', () => {
    expect(findFileNameDate('PXL_20220831_003137144.mp4')).toEqual({
      kind: 'instant',
      ms: Date.parse('2022-08-31T00:31:37.144Z'),
      meaning: 'start',
    });
    expect(findFileNameDate('PXL_20220831_003137144.TS.mp4')).toMatchObject({ kind: 'instant' });
  });

  test('screen recordings carry Unix seconds, of what is not said', () => {
    expect(findFileNameDate('RPReplay_Final1707232371.MP4')).toEqual({
      kind: 'instant',
      ms: Date.parse('2024-02-06T15:12:51Z'),
      meaning: 'unknown',
    });
  });

  test.each(['VID-20240203-WA0001.mp4', 'IMG-20240203-WA0001.jpg'])('%s: the day alone', (name) => {
    expect(findFileNameDate(name)).toEqual({ kind: 'day', date: '2024-02-03' });
  });

  test.each([
    '2026-03-02 09.05.06.mp4',
    'Screen Recording 2026-03-02 at 09.05.06.mov',
    'relay_2026-03-02T09-05-06.mkv',
  ])('%s: a local time of something', (name) => {
    expect(findFileNameDate(name)).toEqual(local('2026-03-02T09:05:06', 'unknown'));
  });
});

describe('names that say nothing', () => {
  test.each([
    'IMG_0250.MOV',
    'teal station 4.mp4',
    'VID_20261302_090506.mp4',
    'VID_20260302_250506.mp4',
    'VID_20260230_090506.mp4',
    'PXL_20220831_003137.mp4.txt',
    'RPReplay_Final170723237.MP4',
    '120260302_0905061.mp4',
    'MVI_20260302.mp4',
    '2026-03-02.mp4',
    '',
  ])('"%s"', (name) => {
    expect(findFileNameDate(name)).toBeNull();
  });
});
