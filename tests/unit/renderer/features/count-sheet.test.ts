import { describe, expect, test } from 'vitest';
import {
  buildCountSheet,
  findLineAt,
  findLineBeside,
  getMomentAt,
  getShareOf,
  getStillMoment,
} from '../../../../renderer/features/review/count-sheet.ts';
import { drawEvidence } from '../../../../renderer/features/review/evidence-drawing.ts';
import { wordLags } from '../../../../renderer/features/review/lag-words.ts';
import type { EvidenceView } from '../../../../src-core/contract/evidence-view.ts';
import type { ClipView } from '../../../../src-core/contract/lesson-view.ts';
import { buildClip } from '../walked-lesson.ts';

const EVIDENCE: EvidenceView = {
  clip: 'c1',
  strip: [1.5, 2.5].map((atSeconds, at) => ({ number: at + 1, atSeconds, jpeg: null })),
  reps: {
    count: 2,
    confidence: 0.9,
    timesSeconds: [1.5, 2.5],
    runsSeconds: [[0.6, 2.5]],
    spanSeconds: [0.6, 2.5],
    trace: { rateHz: 10, signal: Array.from({ length: 30 }, (_, at) => Math.sin(at)) },
  },
  unison: {
    areLanesGiven: false,
    score: 0.8,
    lanes: [
      { x: 0.2, lagSeconds: 0, repLagsSeconds: [0, 0] },
      { x: 0.7, lagSeconds: 0.6, repLagsSeconds: [0.6, null] },
    ],
    windows: [{ fromSeconds: 0, toSeconds: 3, score: 0.8 }],
    alternating: false,
    reachSeconds: 0.35,
  },
};

/** A clip of ten seconds of which no reps are known. */
const UNCOUNTED: EvidenceView = {
  clip: 'c1',
  strip: [1.25, 3.75, 6.25, 8.75].map((atSeconds) => ({ number: null, atSeconds, jpeg: null })),
  reps: null,
  unison: null,
};

/** Two reps, a pause of a second and a half, and a third one. */
const PAUSED: EvidenceView = {
  ...EVIDENCE,
  strip: [1.5, 2.5, 5].map((atSeconds, at) => ({ number: at + 1, atSeconds, jpeg: null })),
  reps: {
    ...(EVIDENCE.reps as NonNullable<EvidenceView['reps']>),
    count: 3,
    timesSeconds: [1.5, 2.5, 5],
    runsSeconds: [
      [0.6, 2.5],
      [4, 5],
    ],
    spanSeconds: [0.6, 5],
  },
};

const clipOf = (durationSeconds: number | null, watched: ClipView['seen']['watched'] = 'yes'): ClipView => ({
  ...buildClip('c1', { squad: 'teal', minute: 1, slot: 0, station: 'A' }),
  durationSeconds,
  seen: { watched, reps: null, unison: null, lanes: null, isMeasuring: false },
});

describe('the count sheet', () => {
  test('shows evenly spaced stills, and says why, where reps were not counted', () => {
    const sheet = buildCountSheet(clipOf(10, 'no'), UNCOUNTED);
    expect(sheet.without).toBe('unwatched');
    expect(sheet.lines.map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds])).toEqual([
      [0, 2.5],
      [2.5, 5],
      [5, 7.5],
      [7.5, 10],
    ]);
    expect(sheet.lines.every(({ number }) => number === null)).toBe(true);
    expect(buildCountSheet(clipOf(10, 'in-vain'), UNCOUNTED).without).toBe('in-vain');
    expect(buildCountSheet(clipOf(10), null)).toMatchObject({ lines: [], without: 'asked' });
  });

  test('tells no reps found from not counted', () => {
    const reps = { ...(EVIDENCE.reps as NonNullable<EvidenceView['reps']>), count: null, spanSeconds: null };
    expect(buildCountSheet(clipOf(10), { ...UNCOUNTED, reps }).without).toBe('none-found');
  });

  test('has nothing to count in for a photo', () => {
    expect(buildCountSheet(clipOf(null), UNCOUNTED)).toMatchObject({ lines: [], without: 'no-length' });
  });

  test('has a line a rep and folds what lies before', () => {
    const sheet = buildCountSheet(clipOf(2.9), EVIDENCE);
    expect(sheet.lines.map(({ number, fromSeconds, toSeconds }) => [number, fromSeconds, toSeconds])).toEqual(
      [
        [1, 0.6, 1.5],
        [2, 1.5, 2.5],
      ],
    );
    expect(sheet.folds).toEqual([{ kind: 'before', fromSeconds: 0, toSeconds: 0.6 }]);
  });

  test('finds the line and the height of a moment, and the moment of a height', () => {
    const sheet = buildCountSheet(clipOf(2.9), EVIDENCE);
    expect([findLineAt(sheet, 0.2), findLineAt(sheet, 1), findLineAt(sheet, 2)]).toEqual([-1, 0, 1]);
    expect([getShareOf(sheet, 0), getShareOf(sheet, 2), getShareOf(sheet, 2.8)]).toEqual([0, 0.75, 1]);
    for (const seconds of [0.6, 1, 2, 2.4])
      expect(getMomentAt(sheet, getShareOf(sheet, seconds))).toBeCloseTo(seconds, 9);
  });

  test('gives a pause between reps no room, and steps over it', () => {
    const sheet = buildCountSheet(clipOf(6), PAUSED);
    expect(sheet.lines[2]).toMatchObject({ fromSeconds: 4, toSeconds: 5 });
    expect([findLineAt(sheet, 3), getShareOf(sheet, 3)]).toEqual([-1, sheet.lines[2]?.top]);
    expect(findLineBeside(sheet, 3, 1)?.number).toBe(3);
    expect(findLineBeside(sheet, 3, -1)?.number).toBe(2);
    expect(findLineBeside(sheet, 0, 1)?.number).toBe(1);
    expect(findLineBeside(sheet, 4.5, 1)).toBeNull();
  });

  test('shows a still at a moment that is still its own rep’s', () => {
    const sheet = buildCountSheet(clipOf(2.9), EVIDENCE);
    for (const [at, line] of sheet.lines.entries()) expect(findLineAt(sheet, getStillMoment(line))).toBe(at);
  });

  test('hangs a late lane’s mark lower and rings a rep that a lane left out', () => {
    const sheet = buildCountSheet(clipOf(2.9), EVIDENCE);
    const drawing = drawEvidence(EVIDENCE, sheet);
    const looks = drawing.marks.map(({ lane, rep, look }) => [lane, rep, look]);
    expect(looks).toEqual([
      [0, 0, 'on'],
      [0, 1, 'on'],
      [1, 0, 'off'],
      [1, 1, 'gone'],
    ]);
    const [onBeat, , late] = drawing.marks;
    expect(late?.top).toBeGreaterThan(onBeat?.top ?? 1);
    expect(drawing.trace).toMatch(/^M/);
  });

  test('marks a lane that is ahead as it marks one that is behind', () => {
    const unison = EVIDENCE.unison && {
      ...EVIDENCE.unison,
      lanes: EVIDENCE.unison.lanes.map((lane) => ({
        ...lane,
        lagSeconds: -lane.lagSeconds,
        repLagsSeconds: lane.repLagsSeconds.map((lag) => lag && -lag),
      })),
    };
    const { marks, lanes } = drawEvidence({ ...EVIDENCE, unison }, buildCountSheet(clipOf(2.9), EVIDENCE));
    expect(marks.map(({ look }) => look)).toEqual(['on', 'on', 'off', 'gone']);
    expect(lanes.map(({ isOff }) => isOff)).toEqual([false, true]);
  });

  test('draws nothing where nothing was measured', () => {
    const sheet = buildCountSheet(clipOf(10, 'no'), UNCOUNTED);
    expect(drawEvidence(UNCOUNTED, sheet)).toEqual({
      trace: '',
      marks: [],
      lanes: [],
      areLanesGiven: false,
      unison: '',
      score: null,
    });
  });
});

describe('how far performers are off the beat', () => {
  test('is said of each where there is room', () => {
    expect(wordLags([0.01, 0.12, -0.3, 0])).toEqual({ lags: ['on', '+0.1', '−0.3', 'on'], unit: null });
  });

  test('is said of many only where they are off, and the unit once', () => {
    const lags = ['', '+.1', '−.3', '', '+10.2'];
    expect(wordLags([0.01, 0.12, -0.3, 0, 10.2])).toEqual({ lags, unit: 's off' });
    expect(wordLags([0, 0, 0, 0, 0.02])).toEqual({ lags: ['', '', '', '', ''], unit: 'all on' });
  });
});
