import { describe, expect, test } from 'vitest';
import expected from '../../fixtures/harbour/expected.json' with { type: 'json' };
import { NO_EVIDENCE } from '../../src-core/app/clip-evidence.ts';
import { gradeClips, gradeLesson } from '../../src-core/app/grade-lesson.ts';
import type { GradedClip, GradedLesson } from '../../src-core/app/graded-lesson.ts';
import { type OpenLesson, openLesson } from '../../src-core/app/open-lesson.ts';
import type { Job, LessonPorts } from '../../src-core/app/ports.ts';
import { type ClipsReading, readClips } from '../../src-core/app/read-clips.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { useDemoCopies } from './demo-copies.ts';

const demo = useDemoCopies();
const { signal } = new AbortController();
const job: Job = { signal, onProgress: () => {} };

interface Opened {
  readonly ports: LessonPorts;
  readonly lesson: OpenLesson;
}

async function open(folder: string): Promise<Opened> {
  const ports = openLessonPorts({ folder, signal });
  const lesson = await openLesson(ports);
  if (!lesson.ok) throw new Error('the demo lesson does not open');
  return { ports, lesson: lesson.value };
}

const truth = new Map(expected.clips.map((clip) => [clip.file, clip]));
const clipsOf = (graded: GradedLesson) => graded.squads.flatMap(({ clips }) => clips);
const summarise = ({ path, assignment, proposals }: GradedClip) => ({ path, assignment, proposals });
const reasonOf = (graded: GradedLesson, file: string, criterion: string) =>
  clipsOf(graded)
    .find((clip) => clip.path === file)
    ?.proposals.find((proposal) => proposal.criterion === criterion);

/** The reading as if only some clips showed their cards; class clocks stay, or no tablet would know the time. */
function hideCards(reading: ClipsReading, keeps: (file: string) => boolean): ClipsReading {
  return {
    ...reading,
    clips: reading.clips.map((clip) => {
      const isKept = clip.copies.some(({ file }) => keeps(file.path));
      return isKept || !clip.card ? clip : { ...clip, card: { ...clip.card, station: null } };
    }),
  };
}

describe('places told by their look, in the demo lesson', () => {
  test('the clips without a card resemble those of their station', async () => {
    const { ports, lesson } = await open(await demo.copy());
    const graded = await gradeLesson(ports, lesson, job);
    for (const file of [
      'Teal squad/IMG_0416.MOV',
      'amber/VID_20250515_101036.mp4',
      'MOSS/20250515_111221.mp4',
    ]) {
      const place = reasonOf(graded, file, 'place');
      expect(place, file).toMatchObject({ met: true, reason: { code: 'looks-like-clip' } });
      expect(place?.reason).toMatchObject({ station: truth.get(file)?.station });
    }
  });

  test('once one squad’s clips are labelled, most of the others’ are placed, and none wrongly', async () => {
    const { ports, lesson } = await open(await demo.copy());
    const reading = await readClips(ports, lesson.plan, job);
    // Plum's alone: the only squad with a card at every station.
    const graded = gradeClips(
      lesson,
      hideCards(reading, (file) => file.startsWith('Tablet 3/')),
    );
    const others = clipsOf(graded).filter(({ path: file }) => !file.startsWith('Tablet 3/'));
    const answers = others.flatMap((clip) => {
      const reason = clip.proposals.find(({ criterion }) => criterion === 'place')?.reason;
      const station = truth.get(clip.path)?.station;
      if (!reason || !station) return [];
      return reason.code.startsWith('looks-like') && 'station' in reason ? [reason.station === station] : [];
    });
    expect(answers).not.toContain(false);
    expect(answers.length).toBeGreaterThanOrEqual(12);
  });

  test('without looks the same clips are placed by the walk alone', async () => {
    const { ports, lesson } = await open(await demo.copy());
    const reading = await readClips(ports, lesson.plan, job);
    const blind = { ...reading, clips: reading.clips.map((clip) => ({ ...clip, evidence: NO_EVIDENCE })) };
    const place = reasonOf(gradeClips(lesson, blind), 'Teal squad/IMG_0416.MOV', 'place');
    expect(place?.reason.code).toBe('only-slot-left');
  });
});

describe('the demo lesson watched whole', () => {
  test('is proposed for on every criterion, and costs nothing the second time', async () => {
    const folder = await demo.copy();
    const { ports, lesson } = await open(folder);
    const graded = await gradeLesson(ports, lesson, job, { watch: 'all' });
    const films = clipsOf(graded).filter(({ reading }) => reading.facts?.holds === 'video');
    for (const criterion of ['place', 'exercise', 'reps', 'together']) {
      const said = films.filter((clip) => clip.proposals.some((one) => one.criterion === criterion));
      expect(said.length, criterion).toBe(films.length);
    }
    // The first take of C stops after two of four; the one at D has somebody who is late and misses two.
    expect(reasonOf(graded, 'Teal squad/IMG_0414.MOV', 'reps')?.met).toBe(false);
    expect(reasonOf(graded, 'Teal squad/IMG_0412.MOV', 'reps')?.met).toBe(true);
    expect(reasonOf(graded, 'Tablet 3/IMG_9996.MOV', 'together')?.met).toBe(false);
    // Of six pupils one films; where some were away, all who were there are seen.
    const seen = { code: 'some-move-together', of: 6 };
    expect(reasonOf(graded, 'Teal squad/IMG_0412.MOV', 'together')).toMatchObject({
      met: true,
      reason: seen,
    });
    expect(reasonOf(graded, 'Tablet 3/IMG_9997.MOV', 'together')?.reason.code).toBe('moves-together');
    // Who says how many there are has seen who is away.
    const [first] = films;
    if (first?.path !== 'Teal squad/IMG_0412.MOV') throw new Error(`${first?.path} comes first`);
    const decisions = { ...lesson.journal.decisions, lanesOf: new Map([[first.reading.id, 4]]) };
    const counted = { ...lesson, journal: { ...lesson.journal, decisions } };
    const told = reasonOf(await gradeLesson(ports, counted, job), first.path, 'together');
    expect(told?.reason).toMatchObject({ code: 'moves-together', lanes: 4 });
    const own = await open(folder);
    // No decoding is asked for, so that only the cache can answer.
    const again = await gradeLesson(own.ports, own.lesson, job);
    expect(clipsOf(again).map(summarise)).toEqual(clipsOf(graded).map(summarise));
    expect(again.flags).toEqual(graded.flags);
  });
});
