import { describe, expect, test } from 'vitest';
import { buildHandInAct, draftSheet } from '../../../src-core/app/export-sheet.ts';
import { findClip } from '../../../src-core/app/find-clip.ts';
import type { GradedLesson } from '../../../src-core/app/graded-lesson.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';
import { CLEAN, grade } from './small-clips.ts';

const flags = ({ flags: raised }: GradedLesson) => raised.map(({ key }) => key);
const aside = ({ aside: left }: GradedLesson) => left.map(({ reading, reason }) => `${reading.id} ${reason}`);
const walks = ({ squads }: GradedLesson) =>
  squads.map(({ clips }) => clips.map(({ reading }) => reading.id).join(' '));
const withClip = (more: (typeof CLEAN)[number]) => [...CLEAN, more];

describe('a lesson where everything went well', () => {
  const graded = grade(CLEAN);

  test('has every clip in its slot and no flag', () => {
    expect(flags(graded)).toEqual([]);
    expect(walks(graded)).toEqual(['tA tB', 'pB pA']);
    expect(graded.squads.flatMap(({ clips }) => clips.map(({ assignment }) => assignment.slot))).toEqual([
      0, 1, 0, 1,
    ]);
  });

  test('is proposed and not marked', () => {
    expect(graded.squads[0]?.clips[0]?.proposals).toMatchObject([{ criterion: 'place', met: true }]);
    expect(graded.score.pupils.map(({ state }) => state)).toEqual(['unconfirmed', 'unconfirmed']);
  });

  test('names the clocks that nobody checked', () => {
    expect(graded.problems.map(({ code }) => code)).toEqual(['clock-unchecked', 'clock-unchecked']);
  });
});

describe('what is set aside', () => {
  test('is another period’s, with a notice that holds nothing up', () => {
    const graded = grade(withClip({ id: 'old', paths: ['Teal/IMG_0000.MOV'], at: '10:00:00', station: 'A' }));
    expect(aside(graded)).toEqual(['old other-period']);
    expect(graded.flags).toMatchObject([
      { key: 'outside-period:teal:old', asks: false, flag: { period: 'p2' } },
    ]);
  });

  test('is the film of the class clock, which corrects the tablet', () => {
    const graded = grade(
      withClip({ id: 'clock', paths: ['Teal/IMG_0000.MOV'], at: '09:01:00', clockCard: true }),
    );
    expect(aside(graded)).toEqual(['clock clock-film']);
    expect(graded.squads[0]?.clock.from).toBe('clock-film');
  });

  test('is an edited copy beside its original, and not one without it', () => {
    const edited = { id: 'edit', paths: ['Teal/IMG_E0001.MOV'], at: '09:05:00', station: 'A' };
    expect(aside(grade(withClip(edited)))).toEqual(['edit edited-copy']);
    expect(aside(grade([edited]))).toEqual([]);
  });

  test('is what cannot be read, with a flag', () => {
    const broken = { facts: null, mediaProblems: [{ code: 'media-empty' as const }] };
    const graded = grade(withClip({ id: 'x', paths: ['Teal/IMG_0009.MOV'], change: broken }));
    expect(aside(graded)).toEqual(['x unreadable']);
    expect(flags(graded)).toEqual(['unreadable:teal:x']);
  });

  test('is what the teacher sets aside, and comes back at a word', () => {
    const none = { kind: 'clip-placed', clip: 'tA', slot: 'none' } as const;
    expect(aside(grade(CLEAN, [none]))).toEqual(['tA by-teacher']);
    expect(aside(grade(CLEAN, [none, { ...none, slot: null }]))).toEqual([]);
  });
});

describe('whose a clip is', () => {
  const twice = [
    ...CLEAN.slice(1),
    { id: 'tA', paths: ['Plum/x.MOV', 'Teal/y.MOV'], at: '09:05:00', station: 'A' },
  ];

  test('stays open where two squads handed it in and nothing tells', () => {
    const both = grade([{ id: 'x', paths: ['Plum/x.MOV', 'Teal/y.MOV'], at: '09:05:00' }]);
    expect(aside(both)).toEqual(['x nobodys']);
    expect(flags(both)).toContain('handed-in-twice:plum:x');
  });

  test('no longer waits once the teacher has left the clip out', () => {
    const left = grade(
      [{ id: 'x', paths: ['Plum/x.MOV', 'Teal/y.MOV'], at: '09:05:00' }],
      [{ kind: 'clip-placed', clip: 'x', slot: 'none' }],
    );
    expect(aside(left)).toEqual(['x by-teacher']);
  });

  test('is the one’s who lacks its station', () => {
    const graded = grade(twice);
    expect(walks(graded)).toEqual(['tA tB', 'pB pA']);
    expect(flags(graded)).toEqual(['handed-in-twice:plum:tA']);
  });

  test('is the teacher’s to say', () => {
    const graded = grade(twice, [{ kind: 'clip-moved', clip: 'tA', squad: 'plum' }]);
    expect(walks(graded)[0]).toBe('tB');
    expect(flags(graded)).not.toContain('handed-in-twice:plum:tA');
  });

  test('falls back to its folder where the squad named has left the plan', () => {
    const graded = grade(CLEAN, [{ kind: 'clip-moved', clip: 'tA', squad: 'ghost' }]);
    expect(walks(graded)).toEqual(['tA tB', 'pB pA']);
  });
});

describe('decisions on what the plan no longer has', () => {
  test('count for nothing and break nothing', () => {
    const graded = grade(
      CLEAN,
      [
        { kind: 'station-set', clip: 'tA', station: 'Z' },
        { kind: 'clip-placed', clip: 'tB', slot: 39 },
        { kind: 'criterion-marked', clip: 'tB', criterion: 'gone', met: true },
        { kind: 'flag-settled', flag: 'missing:ghost:3', settled: 'kept', reason: null },
        { kind: 'squad-marked', squad: 'ghost', criterion: 'care', points: 2 },
        { kind: 'attendance-set', pupil: 'nobody', attendance: 'absent', arrived: null },
      ],
      buildSmallPlan((raw) => raw.squads.reverse()),
    );
    expect(walks(graded)).toEqual(['pB pA', 'tA tB']);
    expect(graded.squads[1]?.clips[1]?.assignment.slot).toBe(1);
  });
});

describe('the grade sheet', () => {
  const missing = grade(CLEAN.slice(1));

  test('is refused while a flag is open, and says that it is not final where it is wanted', () => {
    const refused = draftSheet(missing, { evenWithOpenFlags: false, columns: null });
    expect(refused).toMatchObject({ text: null, problems: [{ code: 'hand-in-flags-open', openFlags: 1 }] });
    const draft = draftSheet(missing, { evenWithOpenFlags: true, columns: null });
    expect(draft.text).toContain('not final');
    expect(buildHandInAct(['a.csv'], draft.check)).toEqual({
      kind: 'handed-in',
      files: ['a.csv'],
      pupils: 2,
      unconfirmed: 2,
      openFlags: 1,
    });
  });

  test('has the columns that are asked for, and how each mark stands in any case', () => {
    const columns = [{ head: 'Id', field: 'pupil' as const }];
    expect(draftSheet(missing, { evenWithOpenFlags: true, columns }).text).toMatch(
      /^Id,state\r\nk-teal,"unconfirmed/,
    );
  });
});

describe('a clip’s name as written', () => {
  const graded = grade([...CLEAN, { id: 'abcd1234', paths: ['Plum/IMG_0001.MOV'], at: '09:15:00' }]);
  const find = (name: string) => findClip(graded, name)?.id ?? null;

  test('is its path, from farther up too, its id or the beginning of it, or its name alone', () => {
    expect(find('Teal/IMG_0001.MOV')).toBe('tA');
    expect(find('lesson/clips/Teal/IMG_0001.MOV')).toBe('tA');
    expect(find('abcd')).toBe('abcd1234');
    expect(find('IMG_0002.MOV')).toBe('tB');
  });

  test('is none where several fit, or nothing does', () => {
    expect([find('IMG_0001.MOV'), find('abc'), find(''), find('IMG_00')]).toEqual([null, null, null, null]);
  });
});
