import { describe, expect, test } from 'vitest';
import type { Stamp } from '../../../src-core/intake/stamp.ts';
import { getTabletTimes, type LessonTimes, type TabletClip } from '../../../src-core/intake/tablet-times.ts';

const at = (time: string) => Date.parse(`2025-05-15T${time}Z`);

const lesson: LessonTimes = {
  windows: [
    { code: 'p1', startMs: at('09:00:00'), endMs: at('09:45:00') },
    { code: 'p2', startMs: at('09:50:00'), endMs: at('10:35:00') },
  ],
  period: 'p2',
  graceSeconds: 300,
  doubtSeconds: 90,
};

const stampAt = (time: string | null, change: Partial<Stamp> = {}): Stamp => ({
  readMs: time === null ? null : at(time),
  local: null,
  source: time === null ? 'none' : 'recording-key',
  meaning: 'start',
  startMs: time === null ? null : at(time),
  uncertaintySeconds: time === null ? Number.POSITIVE_INFINITY : 1,
  trust: time === null ? 'none' : 'firm',
  reason: time === null ? 'nothing-usable' : 'recording-date-written',
  problems: [],
  ...change,
});

/** A clip of the series IMG_ by number and time of filming. */
const clip = (value: number, time: string | null, change: Partial<TabletClip> = {}): TabletClip => ({
  id: `c${value}`,
  name: `IMG_${value}.MOV`,
  number: { series: 'IMG_', value },
  stamp: stampAt(time),
  exportDated: false,
  clockSeen: null,
  showsLesson: false,
  ...change,
});

const read = (clips: readonly TabletClip[], teacher: number | null = null) =>
  getTabletTimes(clips, lesson, teacher);
const ids = (clips: readonly TabletClip[]) => read(clips).clips.map(({ id }) => id);
const periods = (clips: readonly TabletClip[], teacher: number | null = null) =>
  read(clips, teacher).clips.map(({ id, period }) => `${id} ${period}`);

describe('one tablet’s clips in time', () => {
  test('go by their dates, whatever their numbers say', () => {
    expect(ids([clip(3, '10:00:00'), clip(1, '10:10:00'), clip(2, '09:55:00')])).toEqual(['c2', 'c3', 'c1']);
  });

  test('without a date keep the place of their number, without a time, in doubt', () => {
    const { clips } = read([clip(1, '10:00:00'), clip(2, null), clip(3, '10:05:00')]);
    expect(clips[1]).toMatchObject({ id: 'c2', startMs: null, by: 'number', doubt: 'no-date', period: 'p2' });
    expect(clips[1]?.uncertaintySeconds).toBe(Number.POSITIVE_INFINITY);
    expect(clips[0]?.doubt).toBeNull();
  });

  test('dated by an export go by number too', () => {
    const exported = [clip(2, '10:00:00', { exportDated: true }), clip(1, '10:01:00', { exportDated: true })];
    const { clips } = read(exported);
    expect(clips.map(({ id, by, doubt }) => [id, by, doubt])).toEqual([
      ['c1', 'number', 'export-date'],
      ['c2', 'number', 'export-date'],
    ]);
  });

  test('with a weak date and no number are ordered by it all the same', () => {
    const weak = clip(9, '10:00:00', { number: null, stamp: stampAt('10:00:00', { trust: 'weak' }) });
    expect(read([weak]).clips[0]).toMatchObject({
      by: 'date',
      startMs: at('10:00:00'),
      doubt: 'weak-source',
    });
  });

  test('are doubted where their start is less certain than the plan allows', () => {
    const vague = clip(1, '10:00:00', { stamp: stampAt('10:00:00', { uncertaintySeconds: 91 }) });
    const just = clip(2, '10:01:00', { stamp: stampAt('10:01:00', { uncertaintySeconds: 90 }) });
    expect(read([vague, just]).clips.map(({ doubt }) => doubt)).toEqual(['weak-source', null]);
  });

  test('at a local time that came twice take no date', () => {
    const twice = clip(1, '10:00:00', {
      stamp: stampAt('10:00:00', { reason: 'local-time-ambiguous', trust: 'weak' }),
    });
    expect(read([twice]).clips[0]).toMatchObject({ startMs: null, doubt: 'local-ambiguous' });
  });

  test('carry the uncertainty of their tablet’s clock on top of their own', () => {
    expect(read([clip(1, '10:00:00')]).clips[0]?.uncertaintySeconds).toBe(121);
    expect(read([clip(1, '10:00:00')], 0).clips[0]?.uncertaintySeconds).toBe(2);
  });
});

describe('the period of a clip', () => {
  test('is the one it began in, or none', () => {
    const clips = [clip(1, '09:30:00'), clip(2, '10:00:00'), clip(3, '14:00:00')];
    expect(periods(clips)).toEqual(['c1 p1', 'c2 p2', 'c3 null']);
  });

  test('is told after the clock was corrected', () => {
    expect(periods([clip(1, '09:30:00')], 37 * 60)).toEqual(['c1 p2']);
  });

  test('without a date is its neighbours’ where they agree, else the lesson’s', () => {
    const between = (before: string, after: string) =>
      periods([clip(1, before), clip(2, null), clip(3, after)], 0)[1];
    expect(between('09:10:00', '09:20:00')).toBe('c2 p1');
    expect(between('14:00:00', '14:10:00')).toBe('c2 null');
    expect(between('09:10:00', '10:00:00')).toBe('c2 p2');
  });

  test('of a tablet whose unchecked clock fits none is the lesson’s for the run that shows its cards', () => {
    const cards = { showsLesson: true };
    const clips = [clip(1, '20:00:00'), clip(2, '21:00:00', cards), clip(3, '21:05:00', cards)];
    const times = read(clips);
    expect(times.splitByBreaks).toBe(true);
    expect(times.clips.map(({ period }) => period)).toEqual([null, 'p2', 'p2']);
  });

  test('is not told by a date that is not believed where a card of the lesson is seen', () => {
    const late = stampAt('18:00:00', { trust: 'weak', reason: 'file-time-only', source: 'file-time' });
    const odd = (change: Partial<TabletClip>) => clip(9, null, { number: null, stamp: late, ...change });
    const around = [clip(1, '10:00:00'), clip(2, '10:05:00')];
    expect(periods([...around, odd({ showsLesson: true })])[2]).toBe('c9 p2');
    expect(read([...around, odd({ showsLesson: true })]).clips[2]?.doubt).toBe('no-date');
    expect(periods([...around, odd({ showsLesson: false })])[2]).toBe('c9 null');
    expect(periods([...around, odd({ showsLesson: true, stamp: stampAt('18:00:00') })])[2]).toBe('c9 null');
  });

  test('is not guessed where several runs show no card', () => {
    expect(read([clip(1, '20:00:00'), clip(2, '21:00:00')])).toMatchObject({ splitByBreaks: false });
  });

  test('is none for clips of another day by a checked clock, cards or not', () => {
    const clockSeen = { trueStartMs: at('21:00:00'), spreadSeconds: 0.5 };
    const times = read([clip(1, '21:00:00', { clockSeen, showsLesson: true })]);
    expect(times).toMatchObject({ splitByBreaks: false, clock: { from: 'clock-film' } });
    expect(times.clips[0]?.period).toBeNull();
    expect(read([clip(1, '21:00:00', { showsLesson: true })], 0).clips[0]?.period).toBeNull();
  });
});

describe('the tablet’s clock', () => {
  const clockSeen = { trueStartMs: at('10:37:00'), spreadSeconds: 0.5 };

  test('is corrected by a clip that shows the class clock', () => {
    const { clock, clips } = read([clip(1, '10:00:00', { clockSeen })]);
    expect(clock).toMatchObject({ from: 'clock-film', offsetSeconds: 37 * 60 });
    expect(clips[0]?.startMs).toBe(at('10:37:00'));
  });

  test('is not corrected by a clip whose own date is not believed', () => {
    const weak = clip(1, '10:00:00', { clockSeen, stamp: stampAt('10:00:00', { trust: 'weak' }) });
    expect(read([weak]).clock.from).toBe('nothing');
    const exported = clip(1, '13:00:00', { clockSeen, exportDated: true });
    expect(read([exported, clip(2, '10:05:00')])).toMatchObject({
      clock: { from: 'nothing' },
      clips: [{}, { startMs: at('10:05:00'), period: 'p2' }],
    });
  });

  test('of an empty tablet is nobody’s guess', () => {
    expect(read([])).toMatchObject({ clips: [], splitByBreaks: false, clock: { from: 'nothing' } });
  });
});
