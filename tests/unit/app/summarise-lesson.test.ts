import { expect, test } from 'vitest';
import { FIGURE_WORDS } from '../../../renderer/text/english/look-back.ts';
import { getMovementOptions, NO_EVIDENCE } from '../../../src-core/app/clip-evidence.ts';
import { buildCsv, buildFigures, listSections, summariseLesson } from '../../../src-core/app/look-back.ts';
import type { ClipMovement } from '../../../src-core/evidence/clip-movement.ts';
import { buildSummaryText, parseSummary } from '../../../src-core/lesson-file/summary-file.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';
import { CLEAN, grade, type SaidClip } from './small-clips.ts';

const plan = buildSmallPlan();

/** A movement with so many reps and this unison. */
function moved(station: string, count: number, score: number) {
  const movement = {
    reps: { count },
    unison: {
      score,
      lanes: [],
      repCount: count,
      windows: [],
      alternating: false,
      together: true,
      missingLanes: 0,
    },
  } as unknown as ClipMovement;
  return {
    evidence: { ...NO_EVIDENCE, movements: [{ options: getMovementOptions(plan, station), movement }] },
  };
}

const teal = (summary: ReturnType<typeof summariseLesson>) => {
  const [first] = summary.squads;
  if (!first) throw new Error('no squad');
  return first;
};

test('a lesson’s figures tell the teacher’s answers from the machine’s', () => {
  const graded = grade(CLEAN, [{ kind: 'clip-confirmed', clip: 'tA', answers: { place: true } }]);
  const { answers, isConfirmed, slots, clips } = teal(summariseLesson(graded, 0));
  const place = answers.find(({ criterion }) => criterion === 'place');
  expect(place).toMatchObject({ metByTeacher: 1, metByMachine: 1, notMetByTeacher: 0, notMetByMachine: 0 });
  expect([slots, clips, isConfirmed]).toEqual([2, 2, false]);
});

test('a missing clip is a flag and no answer', () => {
  const { flags, clips, answers } = teal(summariseLesson(grade(CLEAN.filter(({ id }) => id !== 'tB')), 0));
  expect(flags).toContainEqual({ code: 'missing', open: 1, kept: 0, cleared: 0 });
  expect(clips).toBe(1);
  expect(
    Math.max(...answers.map(({ metByTeacher, metByMachine, open }) => metByTeacher + metByMachine + open)),
  ).toBe(1);
});

test('reps are short by the count, unless the teacher says otherwise', () => {
  const [station] = plan.stations;
  const short = (station?.reps ?? 0) - 3;
  const clips = CLEAN.map(
    (clip): SaidClip => (clip.id === 'tA' ? { ...clip, change: moved('A', short, 0.873) } : clip),
  );
  const byCount = teal(summariseLesson(grade(clips), 0));
  expect(byCount.reps).toEqual({ told: 1, toldByTeacher: 0, short: 1 });
  expect(byCount.unison).toEqual([0.87]);
  const checking = plan.rubric.clip.find(({ checks }) => checks === 'reps')?.code ?? '';
  const said = grade(clips, [{ kind: 'criterion-marked', clip: 'tA', criterion: checking, met: true }]);
  expect(teal(summariseLesson(said, 0)).reps).toEqual({ told: 1, toldByTeacher: 1, short: 0 });
});

test('figures hold no pupil: neither id nor name, and a make-up that only says whether it is the same', () => {
  const graded = grade(CLEAN);
  const summary = summariseLesson(graded, 0);
  expect(JSON.stringify(summary)).not.toMatch(/k-teal|k-plum|Odda|Quillfeather/);
  const makeUps = summary.squads.map(({ makeUp }) => makeUp);
  expect(makeUps.every((text) => /^[0-9a-f]{4}$/.test(text))).toBe(true);
  expect(new Set(makeUps).size).toBe(2);
  const shuffled = { ...graded, lesson: { ...graded.lesson, pupils: graded.lesson.pupils.toReversed() } };
  expect(summariseLesson(shuffled, 0).squads.map(({ makeUp }) => makeUp)).toEqual(makeUps);
});

test('a summary comes back from its file, and one of another version does not', () => {
  const kept = {
    from: { records: '0'.repeat(32), clips: 'f'.repeat(32), files: 4, looked: 4, watched: 0 },
    summary: summariseLesson(grade(CLEAN), 0),
  };
  const text = buildSummaryText(kept);
  expect(parseSummary(text)).toEqual(kept);
  for (const other of [text.replace('"version":1', '"version":2'), text.slice(0, -20), '{}', ''])
    expect(parseSummary(other)).toBeNull();
});

test('exported figures have a row for each squad in each lesson, and no cell that a spreadsheet would run', () => {
  const summary = summariseLesson(grade(CLEAN), 0);
  const named = { ...summary, lesson: { ...summary.lesson, title: '=1+1' } };
  const { text } = buildCsv(buildFigures(listSections([named]), FIGURE_WORDS));
  const [heads, ...rows] = text.trimEnd().split('\r\n');
  expect(rows).toHaveLength(2);
  expect(heads).toContain('Clips with reps short');
  expect(rows[0]).toContain("'=1+1");
});
