import { describe, expect, test } from 'vitest';
import { hideSquads } from '../../../renderer/client/lesson-names.ts';
import { nameAside, nameOrderRule, nameStationSource } from '../../../renderer/text/english/circuit.ts';
import { describeFlag, nameFlag, nameOneFlag } from '../../../renderer/text/english/flags.ts';
import { explainProposal } from '../../../renderer/text/english/proposals.ts';
import { describeStampProblem, explainStamp, nameSource } from '../../../renderer/text/english/stamps.ts';
import type { Names } from '../../../renderer/text/names.ts';
import type { Stamp, StampProblem, StampReason } from '../../../src-core/intake/stamp.ts';
import type { ClockDoubt } from '../../../src-core/intake/tablet-times.ts';
import type { ProposalReason } from '../../../src-core/marking/proposal.ts';
import type { Flag, FlagCode } from '../../../src-core/matching/flag.ts';
import { PLAN } from './walked-lesson.ts';

const names: Names = {
  squad: (code) => `Squad ${code}`,
  station: (code) => `Station ${code}`,
  planPlace: (path) => `Place ${path}`,
  clip: (id) => `${id}.MOV`,
  time: () => '10:46:03',
};

const base = { squad: 'teal', clip: 'c1' };
const tablet = {
  ...base,
  clip: null,
  doubt: 'tablet-clock',
  uncertaintySeconds: Number.POSITIVE_INFINITY,
} as const;

/** Examples of every flag, by code; a code without one fails the build. */
const FLAGS: { readonly [Code in FlagCode]: readonly Omit<Extract<Flag, { code: Code }>, 'code'>[] } = {
  'out-of-order': [{ ...base, slot: 3, station: 'F', against: { clip: 'c2', slot: 2, side: 'before' } }],
  missing: [
    { ...base, clip: null, slot: 4, station: 'F', candidates: [] },
    { ...base, clip: null, slot: 4, station: 'F', candidates: ['c1', 'c2'] },
  ],
  extra: [
    { ...base, station: null },
    { ...base, station: 'A' },
  ],
  retake: [{ ...base, slot: 2, counts: 'c2', returned: false }],
  'wrong-place': [{ ...base, slot: 2, expected: 'A', station: 'B' }],
  unplaced: [
    {
      ...base,
      either: [
        { slot: 1, station: 'B' },
        { slot: 2, station: null },
        { slot: null, station: null },
      ],
    },
  ],
  'clock-doubtful': [
    ...(['no-date', 'date-only', 'weak-source', 'local-ambiguous', 'export-date'] satisfies ClockDoubt[]).map(
      (doubt) => ({
        ...base,
        doubt,
        uncertaintySeconds: 100,
        shiftSeconds: null,
      }),
    ),
    { ...tablet, shiftSeconds: null },
    { ...tablet, shiftSeconds: 3600 },
    { ...tablet, shiftSeconds: -10_800 },
  ],
  'outside-period': [
    { ...base, startMs: 0, period: null },
    { ...base, startMs: 0, period: 'p2' },
  ],
  'handed-in-twice': [
    { ...base, alsoIn: ['moss'] },
    { ...base, alsoIn: ['moss', 'plum'] },
  ],
  'other-squad': [
    {
      ...base,
      likely: 'moss',
      hints: [
        { kind: 'recorder', name: 'Skerry Dunlin 8' },
        { kind: 'overlap', clip: 'c2' },
        { kind: 'fills-gap', station: 'A' },
        { kind: 'name-series', neighbour: 'c3' },
        { kind: 'pinnie', squad: 'moss' },
      ],
    },
  ],
  'same-footage': [
    { ...base, like: 'c2', likeSquad: 'moss' },
    { ...base, like: 'c2', likeSquad: null },
  ],
  unreadable: ['media-empty', 'media-malformed', 'decode-failed', 'gone'].map((problem) => ({
    ...base,
    problem,
  })),
  'too-short': [
    { ...base, durationSeconds: 0 },
    { ...base, durationSeconds: 2.5 },
  ],
};

const HOLES = /undefined|NaN|Infinity|\[object|\.\.| {2}/;

describe('the words for flags', () => {
  const all = Object.entries(FLAGS).flatMap(([code, examples]) =>
    examples.map((facts) => ({ code, ...facts }) as Flag),
  );

  test.each(all.map((flag) => [flag.code, flag] as const))(
    '%s says what is to be seen and what to do',
    (code, flag) => {
      const { what, todo } = describeFlag(flag, names);
      expect(what).toMatch(/^[A-Z].*\.$/);
      expect(todo).toMatch(/^[A-Z].*\.$/);
      expect(`${what} ${todo}`).not.toMatch(HOLES);
      expect(nameFlag(code)).toMatch(/^[A-Z]/);
    },
  );

  test('call a photo a photo, and a short clip too short', () => {
    const [photo, brief] = all.filter(({ code }) => code === 'too-short');
    if (!photo || !brief) throw new Error('both are there');
    expect([nameOneFlag(photo), nameOneFlag(brief)]).toEqual(['A photo', 'Too short']);
  });

  test('count slots from one and name both choices', () => {
    const [flag] = all.filter(({ code }) => code === 'unplaced');
    expect(flag && describeFlag(flag, names).what).toBe(
      'It may be slot 2 (Station B), slot 3 or no slot at all.',
    );
  });

  test('name no squad and no file while names are hidden', () => {
    const told = all.map((flag) => JSON.stringify(describeFlag(flag, hideSquads(names, PLAN.squads))));
    const twice = { code: 'handed-in-twice', squad: 'teal', clip: 'c1', alsoIn: ['plum'] } as const;
    expect(describeFlag(twice, hideSquads(names, PLAN.squads)).what).toBe(
      'The same clip lies in the folders of squad 1 and squad 2.',
    );
    expect(told.filter((words) => /Squad |\.MOV/.test(words))).toEqual([]);
    expect(told.filter((words) => /squad 1|one clip/.test(words)).length).toBeGreaterThan(5);
  });

  test('say which way a clock would have to be set', () => {
    const todos = FLAGS['clock-doubtful'].map(
      (facts) => describeFlag({ code: 'clock-doubtful', ...facts }, names).todo,
    );
    expect(todos.slice(-2)).toEqual([
      'Adding 60 min would fit. Set this tablet’s clock correction.',
      'Taking away 3 h would fit. Set this tablet’s clock correction.',
    ]);
  });
});

describe('the words for stamps', () => {
  const REASONS: Readonly<Record<StampReason, true>> = {
    'recording-date-written': true,
    'modified-after-duration': true,
    'name-plus-duration-is-header': true,
    'name-agrees-with-header': true,
    'android-writes-at-stop': true,
    'exif-original-written': true,
    'header-alone': true,
    'header-local-by-custom': true,
    'file-creation-only': true,
    'name-only': true,
    'name-date-only': true,
    'file-time-only': true,
    'local-time-ambiguous': true,
    'local-time-skipped': true,
    'header-implausible': true,
    'nothing-usable': true,
  };

  test.each(Object.keys(REASONS))('%s is said in one line', (reason) => {
    expect(explainStamp({ reason } as Stamp)).toMatch(/^[A-Z][^\n]*\.$/);
  });

  const problems: {
    readonly [Code in StampProblem['code']]: Omit<Extract<StampProblem, { code: Code }>, 'code'>;
  } = {
    'stamp-header-unusable': { field: 'movie-header', raw: '0' },
    'stamp-sources-disagree': { chosen: 'file-name', other: 'movie-header', differenceSeconds: 7200 },
    'stamp-zone-unknown': { source: 'riff-date' },
    'stamp-local-ambiguous': { local: '2025-11-02T01:30:00' },
    'stamp-local-skipped': { local: '2025-03-09T02:30:00' },
    'stamp-date-without-time': { date: '2025-05-15' },
  };

  test.each(Object.entries(problems))('%s is said in one line', (code, facts) => {
    const words = describeStampProblem({ code, ...facts } as StampProblem);
    expect(words).toMatch(/^\S[^\n]*\.$/);
    expect(words).not.toMatch(HOLES);
  });

  test('name where nothing was found', () => expect(nameSource('none')).toBe('nothing'));
});

describe('the words for proposals and the circuit', () => {
  const reasons: {
    readonly [Code in ProposalReason['code']]: Omit<Extract<ProposalReason, { code: Code }>, 'code'>;
  } = {
    'card-shows-station': { station: 'A', atSeconds: 61.4 },
    'card-shows-other': { station: 'A', expected: 'B', atSeconds: 0.2 },
    'teacher-named-station': { station: 'A' },
    'teacher-named-other': { station: 'A', expected: 'B' },
    'looks-like-clip': { station: 'A', like: 'c2' },
    'looks-like-other': { station: 'A', expected: 'B', like: 'c2' },
    'only-slot-left': { station: 'A' },
    'tempo-fits': { cycleSeconds: 1.94, usualSeconds: [1.5, 4] },
    'tempo-differs': { cycleSeconds: 0.7, usualSeconds: [1.5, 4] },
    'repeats-at-place': { cycleSeconds: 1.94 },
    'no-repetition': {},
    'reps-counted': { count: 10, prescribed: 10 },
    'reps-short': { count: 7, prescribed: 10 },
    'no-reps-seen': { prescribed: 10 },
    'moves-together': { lanes: 4, lagSeconds: -0.12 },
    alternates: { lanes: 2 },
    'lane-misses-reps': { lane: 3, lanes: 4, reps: 6, of: 10 },
    'lane-off-beat': { lane: 3, lanes: 4, lagSeconds: 0.5 },
    'some-move-together': { lanes: 3, of: 4, lagSeconds: -0.12 },
    'lanes-unseen': { missing: 1 },
  };

  test.each(Object.entries(reasons))('%s has words', (code, facts) => {
    const words = explainProposal({ code, ...facts } as ProposalReason, names);
    if ('station' in facts) expect(words).toMatch(/\bA\b/);
    expect(words).toMatch(/^\S.*\S$/);
    expect(words).not.toMatch(HOLES);
  });

  test('tell a place in a clip as minutes and seconds', () => {
    expect(explainProposal({ code: 'card-shows-station', station: 'A', atSeconds: 61.4 }, names)).toBe(
      'card A read at 1:01',
    );
  });

  const explain = (reason: ProposalReason) => explainProposal(reason, names).replaceAll('\u00a0', ' ');

  test('say of reps what was asked for where there are more', () => {
    expect(explain({ code: 'reps-counted', count: 18, prescribed: 16 })).toBe(
      '18 reps counted, 16 asked for',
    );
    expect(explain({ code: 'reps-counted', count: 16, prescribed: 16 })).toBe('16 of 16 reps counted');
    expect(explain({ code: 'reps-short', count: 7, prescribed: 16 })).toBe('7 of 16 reps counted');
  });

  test('say who was seen apart from who keeps time, and no lag of 0.0 s', () => {
    expect(explain({ code: 'some-move-together', lanes: 5, of: 6, lagSeconds: -0.12 })).toBe(
      '5 seen of 6 who were there; all 5 move together, none more than 0.1 s off',
    );
    expect(explain({ code: 'moves-together', lanes: 4, lagSeconds: 0.049 })).toBe(
      '4 move together, all at the same moment',
    );
    expect(explain({ code: 'moves-together', lanes: 4, lagSeconds: 0.05 })).toContain('more than 0.1 s off');
  });

  test.each(Object.entries(reasons))('%s leaves no unit alone on a line', (code, facts) => {
    expect(explainProposal({ code, ...facts } as ProposalReason, names)).not.toMatch(/\d s\b/);
  });

  test('of rules, sources and reasons are never empty, but for a station nobody knows', () => {
    const rules = (['void-route', 'void-after', 'void-clip', 'report'] as const).map(nameOrderRule);
    const asides = (
      [
        'clock-film',
        'edited-copy',
        'other-period',
        'unreadable',
        'by-teacher',
        'other-squad',
        'nobodys',
      ] as const
    ).map(nameAside);
    const sources = (['teacher', 'card', 'inferred'] as const).map(nameStationSource);
    for (const words of [...rules, ...asides, ...sources]) expect(words).toMatch(/\w/);
    expect(nameStationSource(null)).toBe('');
  });
});
