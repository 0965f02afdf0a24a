import type { ClipView, FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import { type Plan, planSchema } from '../../../src-core/lesson/plan.ts';
import { type Flag, getFlagKey } from '../../../src-core/matching/flag.ts';

/** 10:40 in Halifax on 15 May 2025, when Nova Scotia keeps UTC−3. */
export const PERIOD_START_MS = Date.parse('2025-05-15T13:40:00Z');

/** Two squads on a loop of three stations. */
export const PLAN: Plan = planSchema.parse({
  format: 'routemark-plan',
  version: 2,
  lesson: {
    code: 'QUAY',
    revision: 1,
    title: 'Quay loop',
    school: 'Cobble Quay School',
    className: '9 Kelp',
    date: '2025-05-15',
    period: 'p3',
  },
  zone: 'America/Halifax',
  periods: [{ code: 'p3', start: '10:40', end: '11:25' }],
  stations: ['A', 'B', 'C'].map((code) => ({
    code,
    place: `Place ${code}`,
    exercise: 'Squat reaches',
    reps: 5,
  })),
  squads: [
    { code: 'teal', name: 'Teal', startsAt: 'A', route: ['A', 'B', 'C'] },
    { code: 'plum', name: 'Plum', startsAt: 'B', route: ['B', 'C', 'A'] },
  ].map((squad, at) => ({
    ...squad,
    pinnie: { name: squad.code, colour: '#1F8A86' },
    tablet: `Tablet ${at + 1}`,
  })),
  rubric: { clip: [{ code: 'place', label: 'Right place', checks: 'place' }] },
  orderRule: 'void-clip',
});

/** A clip of a squad: filmed `minute` minutes into the period, at a station that its card tells. */
export function buildClip(
  id: string,
  place: {
    readonly squad: string;
    readonly minute: number | null;
    readonly slot: number | null;
    readonly station: string | null;
  },
  more: Partial<ClipView> = {},
): ClipView {
  const startMs = place.minute === null ? null : PERIOD_START_MS + place.minute * 60_000;
  return {
    id,
    squad: place.squad,
    aside: null,
    position: 0,
    path: `${place.squad}/${id}.MOV`,
    copies: [{ path: `${place.squad}/${id}.MOV`, squad: place.squad, sizeBytes: 1000 }],
    holds: 'video',
    container: 'bmff',
    codec: 'avc1',
    durationSeconds: 20,
    stamp: {
      readMs: startMs,
      local: null,
      source: 'movie-header',
      meaning: 'start',
      startMs,
      uncertaintySeconds: 1,
      trust: 'firm',
      reason: 'recording-date-written',
      problems: [],
    },
    time: {
      id,
      startMs,
      uncertaintySeconds: startMs === null ? Number.POSITIVE_INFINITY : 1,
      by: 'date',
      period: 'p3',
      doubt: startMs === null ? 'no-date' : null,
    },
    assignment: {
      clip: id,
      role: place.slot === null ? 'extra' : 'counts',
      slot: place.slot,
      station: place.station,
      stationFrom: place.station === null ? null : 'card',
      inOrder: true,
    },
    card: null,
    showsClock: false,
    isSearched: true,
    seen: { watched: 'no', reps: null, unison: null, lanes: null, isMeasuring: false },
    word: { station: null, squad: null, slot: null, lanes: null },
    flags: [],
    proposals: [],
    criteria: null,
    points: null,
    note: null,
    ...more,
  } as ClipView;
}

/** A flag with its key; clips that it is about are told of it by {@link buildView}. */
export function buildFlag(flag: Flag, more: Partial<FlagView> = {}): FlagView {
  return { key: getFlagKey(flag), flag, answer: null, asks: true, ...more };
}

/** A lesson as read to the end, with these clips and flags. */
export function buildView(
  clips: readonly ClipView[],
  flags: readonly FlagView[] = [],
  more: Partial<LessonView> = {},
): LessonView {
  return {
    lesson: '0123456789abcdef',
    revision: 1,
    path: '/lessons/quay',
    clipsPath: '/lessons/quay/clips',
    isDemo: false,
    plan: PLAN,
    planVersion: '1',
    pupils: [],
    unshown: [],
    squads: PLAN.squads.map(({ code }) => ({
      code,
      clock: { offsetSeconds: 4, uncertaintySeconds: 1, from: 'clock-film', contradicting: [] },
      missing: [],
      order: { kendallTau: { distance: 0, max: 3 }, shareInOrder: 1 },
    })),
    clips: clips.map((clip) => ({
      ...clip,
      flags: flags.filter(({ flag }) => flag.clip === clip.id).map(({ key }) => key),
    })),
    flags,
    squadScores: [],
    pupilScores: [],
    problems: [],
    journal: { undoTarget: null, undoes: null, redoTarget: null, redoes: null, lastAt: null, handedIn: [] },
    reading: { state: 'read', done: clips.length, total: clips.length },
    ...more,
  };
}

/** Teal and Plum walk their routes, a slot every ten minutes, as told. */
export function buildWalk(): readonly ClipView[] {
  return [
    buildClip('t1', { squad: 'teal', minute: 5, slot: 0, station: 'A' }),
    buildClip('t2', { squad: 'teal', minute: 15, slot: 1, station: 'B' }),
    buildClip('t3', { squad: 'teal', minute: 25, slot: 2, station: 'C' }),
    buildClip('p1', { squad: 'plum', minute: 5, slot: 0, station: 'B' }),
    buildClip('p2', { squad: 'plum', minute: 15, slot: 1, station: 'C' }),
    buildClip('p3', { squad: 'plum', minute: 25, slot: 2, station: 'A' }),
  ];
}
