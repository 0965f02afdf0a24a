import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import expected from '../../fixtures/harbour/expected.json' with { type: 'json' };
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import type { GradedLesson } from '../../src-core/app/graded-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { readFirstGrading } from './first-grading.ts';
import { linkDemoEvidence } from './link-folder.ts';

/** How far a start may be from the truth: the clock card renews each second, and headers hold whole seconds. */
const START_TOLERANCE_MS = 2000;

let folder = '';
let graded: GradedLesson;

const grade = async (): Promise<GradedLesson> => {
  const { signal } = new AbortController();
  const ports = openLessonPorts({ folder, signal });
  const lesson = await openLesson(ports);
  expect(lesson.problems).toEqual([]);
  if (!lesson.ok) throw new Error('the demo lesson does not open');
  return gradeLesson(ports, lesson.value, { signal, onProgress: () => {} });
};

beforeAll(async () => {
  const parent = await mkdtemp(path.join(tmpdir(), 'routemark-demo-'));
  folder = path.join(parent, 'lesson');
  await buildDemoLesson(folder);
  await linkDemoEvidence(folder);
  graded = await readFirstGrading();
});

afterAll(() => rm(path.dirname(folder), { recursive: true, force: true }));

/** Every path of a clip, by its id. */
function listPaths(): Map<string, readonly string[]> {
  const clips = [...graded.squads.flatMap(({ clips }) => clips), ...graded.aside];
  return new Map(clips.map(({ reading }) => [reading.id, reading.copies.map(({ file }) => file.path)]));
}

describe('the demo lesson, filmed and graded', () => {
  test('raises exactly the flags that were filmed into it', () => {
    const paths = listPaths();
    const inFolderOf = (squad: string, id: string) => {
      const own = expected.squads[squad as keyof typeof expected.squads].folder;
      const copies = paths.get(id) ?? [];
      return copies.find((copy) => copy.startsWith(`${own}/`)) ?? copies[0] ?? id;
    };
    const findSlot = (squad: string, id: string | null) =>
      graded.squads.find((one) => one.squad.code === squad)?.clips.find(({ reading }) => reading.id === id)
        ?.assignment.slot ?? null;
    const found = graded.flags.map(({ flag }) => {
      const file = flag.clip === null ? null : inFolderOf(flag.squad, flag.clip);
      const slot = 'slot' in flag ? flag.slot : findSlot(flag.squad, flag.clip);
      const base = { code: flag.code, squad: flag.squad, file, slot };
      switch (flag.code) {
        case 'out-of-order': {
          const { clip, ...place } = flag.against;
          const against = { file: inFolderOf(flag.squad, clip), ...place };
          return { ...base, station: flag.station, against };
        }
        case 'missing': {
          const candidates = flag.candidates.map((id) => paths.get(id)?.[0]);
          return { ...base, station: flag.station, candidates };
        }
        case 'retake':
          return { ...base, counts: inFolderOf(flag.squad, flag.counts) };
        case 'clock-doubtful':
          return { ...base, doubt: flag.doubt };
        case 'outside-period':
          return { ...base, period: flag.period };
        case 'handed-in-twice':
          return { ...base, alsoIn: flag.alsoIn };
        case 'other-squad':
          return { ...base, likely: flag.likely };
        case 'unreadable':
          return { ...base, problem: flag.problem };
        case 'too-short':
          return { ...base, durationSeconds: flag.durationSeconds };
        default:
          return base;
      }
    });
    const wanted = expected.flags.map(({ why: _, ...flag }) => flag);
    const byKey = (a: object, b: object) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1);
    expect(found.sort(byKey)).toEqual(wanted.sort(byKey));
  });

  test('puts every clip into its slot, knowing the station as the truth says it can be known', () => {
    for (const squad of graded.squads) {
      const truth = expected.squads[squad.squad.code as keyof typeof expected.squads];
      const bySlot = squad.squad.route.map(
        (_, slot) =>
          squad.clips.find(({ assignment }) => assignment.slot === slot && assignment.role === 'counts')
            ?.path ?? null,
      );
      expect(bySlot, squad.squad.code).toEqual(truth.bySlot);
      const { kendallTau, shareInOrder } = squad.match.order;
      expect(kendallTau.distance).toBe(truth.order.kendallTau);
      expect(shareInOrder).toBeCloseTo(truth.order.inOrder / truth.order.of, 10);
    }
    const routed = new Map(graded.squads.flatMap(({ clips }) => clips).map((clip) => [clip.path, clip]));
    for (const truth of expected.clips) {
      const clip = routed.get(truth.file);
      if (!clip || truth.slot === null) continue;
      expect(clip.assignment.station, truth.file).toBe(truth.station);
      expect(clip.assignment.stationFrom, truth.file).toBe(truth.stationFrom);
    }
  });

  test('corrects every tablet’s clock by the film of the class clock, to within a second', () => {
    for (const { squad, clock } of graded.squads) {
      const truth = expected.squads[squad.code as keyof typeof expected.squads];
      expect(clock.from).toBe('clock-film');
      // The truth is how fast the tablet runs; the correction takes that away.
      expect(Math.abs(clock.offsetSeconds + truth.clockOffsetSeconds), squad.code).toBeLessThanOrEqual(1);
    }
  });

  test('tells when each clip began', () => {
    const routed = graded.squads.flatMap(({ clips }) => clips);
    const timed = routed.filter(({ time }) => time.startMs !== null);
    expect(timed.length).toBe(routed.length - 1);
    for (const clip of timed) {
      const truth = expected.clips.find(({ file }) => file === clip.path);
      expect(truth, clip.path).toBeDefined();
      const errorMs = Math.abs((clip.time.startMs ?? 0) - Date.parse(truth?.start ?? ''));
      expect(errorMs, clip.path).toBeLessThanOrEqual(START_TOLERANCE_MS);
      expect(errorMs / 1000, clip.path).toBeLessThanOrEqual(clip.time.uncertaintySeconds);
    }
  });

  test('comes out the same the second time', async () => {
    const again = await grade();
    expect(again).toEqual(graded);
  });
});
