import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import type { GradedLesson } from '../../src-core/app/graded-lesson.ts';
import { markLesson } from '../../src-core/app/mark-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import type { LessonPorts } from '../../src-core/app/ports.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { type Plan, planSchema } from '../../src-core/lesson/plan.ts';
import type { JournalAct } from '../../src-core/marking/journal-event.ts';
import { generateLesson } from '../bench/generated-lesson.ts';

/** A class of forty-five with sixty clips, marked but for its last squad, in a folder that `dispose` removes. */
export interface CrowdedClass {
  readonly folder: string;
  readonly ports: LessonPorts;
  readonly graded: GradedLesson;
  readonly dispose: () => Promise<void>;
}

const SQUADS = ['Plum', 'Teal', 'Amber', 'Moss', 'Slate', 'Coral'];
const COLOURS = ['#7B3F7A', '#1F8A86', '#E0A32E', '#5B7F3A', '#5A6B7B', '#E4685A'];
const PLACES = [
  'Rope Store',
  'Tide Post',
  'Gull Wall',
  'Crane Square',
  'Buoy Yard',
  'Slipway Bench',
  'Lantern Bank',
  'Net Loft',
  'Chain Locker',
  'Ferry Steps',
];

/** Given names in scripts that the fonts hold; the last are left to the family names. */
const GIVEN = ['Odda', 'Ελένη', 'Наталья', 'Nguyễn', 'Çağla', 'Åse', 'Łucja', 'Tove', 'Bram'];

/** The squad with somebody on the do-not-film list, and who that is. */
export const ON_LIST = { squad: 'Moss', name: 'Shy Kelpmore' } as const;

const CRITERIA = ['place', 'exercise', 'reps', 'together'] as const;

function buildPlan(): Plan {
  const codes = [...'ABCDEFGHIJ'];
  return planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    lesson: {
      code: 'CROWD',
      revision: 1,
      title: 'Harbour circuit',
      school: 'Cobble Quay School',
      className: '9 Kelp',
      date: '2025-05-15',
      period: 'p1',
    },
    zone: 'America/Halifax',
    periods: [{ code: 'p1', start: '09:50', end: '11:30' }],
    stations: codes.map((code, at) => ({ code, place: PLACES[at], exercise: 'Squat reaches', reps: 20 })),
    squads: SQUADS.map((name, squad) => {
      const route = codes.map((_, slot) => codes[(squad + slot) % codes.length]);
      const pinnie = { name: name.toLowerCase(), colour: COLOURS[squad] };
      return {
        code: name.toLowerCase(),
        name,
        pinnie,
        tablet: `tablet ${squad + 1}`,
        startsAt: route[0],
        route,
      };
    }),
    rubric: {
      clip: CRITERIA.map((code) => ({ code, label: `Right ${code}`, checks: code })),
      squad: [
        { code: 'care', label: 'Care of kit', maxPoints: 2 },
        { code: 'team', label: 'Teamwork', maxPoints: 2 },
      ],
    },
    orderRule: 'void-clip',
    scale: [
      { mark: '4', fromPercent: 90 },
      { mark: '3', fromPercent: 70 },
      { mark: '2', fromPercent: 0 },
    ],
  });
}

function buildRoster(): string {
  const lines = Array.from({ length: 45 }, (_, at) => {
    const squad = SQUADS[at % SQUADS.length];
    const given = GIVEN[at % GIVEN.length];
    const [attendance, arrived] =
      at === 7 ? ['late', '10:12'] : [at === 13 ? 'absent' : at === 14 ? 'excused' : 'present', ''];
    const [name, family, stills] =
      at === 21 ? [...ON_LIST.name.split(' '), 'no'] : [given, `Kelpington-${at}`, 'yes'];
    return `k-${at},${name},${family},${squad},${attendance},${arrived},${stills}`;
  });
  return ['id,given,family,squad,attendance,arrived,stills', ...lines, ''].join('\n');
}

/** Writes, reads and marks the class. */
export async function openCrowdedClass(): Promise<CrowdedClass> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-crowd-'));
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) throw new Error('these tests need ffmpeg');
  await generateLesson(folder, ffmpeg.value.path, {
    isWatched: true,
    plan: buildPlan(),
    roster: buildRoster(),
  });
  const ports = openLessonPorts({ folder, signal: new AbortController().signal });
  const unmarked = await grade(ports);
  const marked = await markLesson(ports, decide(unmarked), 'M. Ferrow');
  if (!marked.ok) throw new Error(JSON.stringify(marked.problems));
  const swapped = await grade(ports);
  const settled = await markLesson(ports, settle(swapped), 'M. Ferrow');
  if (!settled.ok) throw new Error(JSON.stringify(settled.problems));
  return {
    folder,
    ports,
    graded: await grade(ports),
    dispose: () => rm(folder, { recursive: true, force: true }),
  };
}

async function grade(ports: LessonPorts): Promise<GradedLesson> {
  const lesson = await openLesson(ports);
  if (!lesson.ok) throw new Error(JSON.stringify(lesson.problems));
  return gradeLesson(ports, lesson.value, { signal: new AbortController().signal, onProgress: () => {} });
}

/** All clips but the last squad's are confirmed, one answer in nine against; two clips of Teal's are swapped. */
function decide({ squads }: GradedLesson): JournalAct[] {
  const own = squads.slice(0, -1).flatMap(({ clips }) => clips.map(({ reading }) => reading.id));
  const answers = (clip: number) =>
    Object.fromEntries(CRITERIA.map((criterion, at) => [criterion, (clip * CRITERIA.length + at) % 9 !== 8]));
  const teal = squads.find(({ squad }) => squad.code === 'teal');
  const [third, fourth] = [teal?.clips[2], teal?.clips[3]].map((clip) => clip?.reading.id ?? '');
  return [
    ...own.map((clip, at): JournalAct => ({ kind: 'clip-confirmed', clip, answers: answers(at) })),
    ...SQUADS.flatMap((squad): JournalAct[] => [
      { kind: 'squad-marked', squad: squad.toLowerCase(), criterion: 'care', points: 2 },
      { kind: 'squad-marked', squad: squad.toLowerCase(), criterion: 'team', points: 1 },
    ]),
    { kind: 'station-set', clip: third ?? '', station: teal?.squad.route[3] ?? '' },
    { kind: 'station-set', clip: fourth ?? '', station: teal?.squad.route[2] ?? '' },
    {
      kind: 'points-overridden',
      of: { type: 'pupil', pupil: 'k-6' },
      change: { type: 'by', points: 1 },
      reason: 'carried the mats back alone',
    },
  ];
}

/** Every flag but the last squad's is settled. */
function settle({ flags, squads }: GradedLesson): JournalAct[] {
  const last = squads.at(-1)?.squad.code;
  return flags
    .filter(({ flag, answer }) => answer === null && flag.squad !== last)
    .map(({ key }) => ({
      kind: 'flag-settled',
      flag: key,
      settled: 'kept',
      reason: 'They went on too early.',
    }));
}
