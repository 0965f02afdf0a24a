import { link, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { getMovementOptions } from '../../src-core/app/clip-evidence.ts';
import type { ClipMovement } from '../../src-core/evidence/clip-movement.ts';
import {
  cardsAnalyser,
  defineMovementAnalyser,
  lookAnalyser,
  motionAnalyser,
  stillsAnalyser,
  watchAnalyser,
} from '../../src-core/host/analysers.ts';
import { readSampleHash } from '../../src-core/host/content-hash.ts';
import { getOptionsKey } from '../../src-core/host/read-clip-movement.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { type Plan, planSchema } from '../../src-core/lesson/plan.ts';
import { buildJournalLine, JOURNAL_HEADER } from '../../src-core/lesson-file/journal-file.ts';
import { buildPlanText } from '../../src-core/lesson-file/plan-file.ts';
import type { JournalDecision } from '../../src-core/marking/journal-event.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { buildEvents } from '../unit/marking/harbour.ts';
import { box, movie, u32 } from '../unit/media/build-boxes.ts';

/** Five classes on 180 days, five squads of ten stations: 900 lessons, 45,000 clips. */
export const YEAR = { classes: 5, days: 180, squads: 5, stations: 10 } as const;

const CODES = [...'ABCDEFGHIJ'].slice(0, YEAR.stations);
const SLOT_MS = 240_000;

/**
 * Writes a year into a folder, below it a folder for each class: plan, roster and journal of every lesson, with every
 * clip confirmed; every clip the headers of a film, with its own date and content, and in the evidence what a first look
 * and watching leave of reps, unison and card. No picture was ever filmed, so nothing can be decoded.
 */
export async function generateYear(folder: string, days: number = YEAR.days): Promise<void> {
  const models = path.join(folder, '.models');
  await mkdir(models, { recursive: true });
  await writeModels(models);
  for (let day = 0; day < days; day += 1) {
    const lessons = Array.from({ length: YEAR.classes }, (_, section) => ({ section, day }));
    await Promise.all(lessons.map((lesson) => writeLesson(folder, models, lesson)));
  }
}

interface LessonPlace {
  readonly section: number;
  readonly day: number;
}

async function writeLesson(folder: string, models: string, { section, day }: LessonPlace): Promise<void> {
  // Schools teach five days a week.
  const dayMs = Date.parse('2025-09-01T00:00:00Z') + (Math.floor(day / 5) * 7 + (day % 5)) * 86_400_000;
  const date = new Date(dayMs).toISOString().slice(0, 10);
  const plan = buildPlan(section, date);
  const home = path.join(folder, plan.lesson.className, date);
  const evidence = path.join(home, 'evidence');
  await mkdir(evidence, { recursive: true });
  const random = seededRandom(section * YEAR.days + day);
  const decisions: JournalDecision[] = [];
  for (const [squad, { code, name, route }] of plan.squads.entries()) {
    const clips = path.join(home, 'clips', name);
    await mkdir(clips, { recursive: true });
    for (const [slot, station] of route.entries()) {
      const file = path.join(clips, `IMG_${1000 + slot}.MP4`);
      const startMs = dayMs + (9 + section) * 3_600_000 + slot * SLOT_MS;
      const serial = u32(((day * YEAR.classes + section) * YEAR.squads + squad) * YEAR.stations + slot);
      await writeFile(file, movie({ created: startMs / 1000 + 2_082_844_800, inside: box('free', serial) }));
      const id = (await readSampleHash(file)).slice(0, 16);
      const count = random() < 0.2 ? 'short' : 'full';
      const clip = squad * YEAR.stations + slot;
      await linkEvidence(models, path.join(evidence, id), { station, count, clip });
      decisions.push({
        kind: 'clip-confirmed',
        clip: id,
        answers: { place: true, reps: count === 'full', together: random() < 0.4 + day / 400 },
      });
    }
    decisions.push({ kind: 'squad-marked', squad: code, criterion: 'care', points: 2 });
  }
  await writeFile(path.join(home, 'plan.json'), buildPlanText(plan));
  await writeFile(path.join(home, 'roster.csv'), buildRoster());
  const lines = [JOURNAL_HEADER, ...buildEvents(decisions).map(buildJournalLine), ''];
  await writeFile(path.join(home, 'marks.jsonl'), lines.join('\n'));
}

function buildPlan(section: number, date: string): Plan {
  const hour = String(9 + section).padStart(2, '0');
  return planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    lesson: {
      ...{ code: 'YEAR', revision: 1, title: 'Harbour circuit', school: 'Cobble Quay School' },
      ...{ className: `9 Kelp ${section + 1}`, date, period: 'p1' },
    },
    zone: 'Etc/UTC',
    periods: [{ code: 'p1', start: `${hour}:00`, end: `${hour}:50` }],
    stations: CODES.map((code) => ({ code, place: `Post ${code}`, exercise: 'Squat reaches', reps: 10 })),
    squads: Array.from({ length: YEAR.squads }, (_, squad) => {
      const route = CODES.map((_, slot) => CODES[(squad * 2 + slot) % CODES.length]);
      const pinnie = { name: `colour ${squad + 1}`, colour: '#1F8A86' };
      return {
        ...{ code: `s${squad + 1}`, name: `squad ${squad + 1}`, pinnie, tablet: `tablet ${squad + 1}` },
        ...{ startsAt: route[0], route },
      };
    }),
    rubric: {
      clip: [
        { code: 'place', label: 'Right place', checks: 'place' },
        { code: 'reps', label: 'Full reps', checks: 'reps' },
        { code: 'together', label: 'Together', checks: 'together' },
      ],
      squad: [{ code: 'care', label: 'Care of kit', maxPoints: 2 }],
    },
    orderRule: 'void-clip',
  });
}

function buildRoster(): string {
  const pupils = Array.from(
    { length: 30 },
    (_, at) => `k-${at},Given ${at},Family ${at},s${(at % YEAR.squads) + 1}`,
  );
  return ['id,given,family,squad', ...pupils, ''].join('\n');
}

/** What is the same for many clips is written once and linked. */
async function writeModels(models: string): Promise<void> {
  const write = (name: string, bytes: string | Uint8Array) => writeFile(path.join(models, name), bytes);
  const look = { durationSeconds: 12, place: null, movingColours: [], from: 'whole-clip' } as const;
  await write('look.json', lookAnalyser.encode(look));
  for (const station of CODES) {
    const text = formatStationCard({ lesson: 'YEAR', station, revision: 1 });
    const readings = [0.2, 0.4].map((atSeconds) => ({ text, atSeconds }));
    await write(`${station}.cards.json`, cardsAnalyser.encode({ readings, problems: [], how: 'searched' }));
  }
  const parts = {
    motion: motionAnalyser.version,
    stills: stillsAnalyser.version,
    look: lookAnalyser.version,
  };
  const random = seededRandom(1);
  const letter = () => String.fromCharCode('a'.charCodeAt(0) + Math.floor(random() * 15));
  for (let clip = 0; clip < YEAR.squads * YEAR.stations; clip += 1) {
    // No two clips of a lesson show the same footage.
    const seconds = Array.from({ length: 12 }, () => Array.from({ length: 72 }, letter).join(''));
    const watch = { print: { seconds }, problems: [], hasMotion: true, parts };
    await write(`${clip}.watch.json`, watchAnalyser.encode(watch));
  }
  // One for each ending: no file takes more than 65,000 links.
  await write('motion.bin', '');
  await write('stills.bin', '');
  for (const [name, count] of [
    ['full', 10],
    ['short', 7],
  ] as const) {
    await write(`${name}.bin`, defineMovementAnalyser('').encode(buildMovement(count)));
  }
}

function buildMovement(count: number): ClipMovement {
  const empty = new Float32Array(0);
  const times = Array.from({ length: count }, (_, rep) => rep + 1);
  const lane = {
    steadiness: 0.9,
    reps: count,
    fault: null,
    repLagsSeconds: times.map(() => 0.1),
  };
  return {
    reps: {
      ...{ count, confidence: 0.8, timesSeconds: times, repConfidences: times.map(() => 0.8), runs: [] },
      ...{
        cycleSeconds: 1,
        spanSeconds: [0, count],
        trace: { rateHz: 10, cycleSecondsAt: empty, strength: empty, signal: empty },
      },
    },
    unison: {
      ...{
        score: count / 12,
        missingLanes: 0,
        repCount: count,
        windows: [],
        alternating: false,
        reachSeconds: 1 / 6,
        together: true,
      },
      lanes: [0.2, 0.8].map((x) => ({ x, lagSeconds: 0.1, ...lane })),
    },
    camera: { widthsPerSecond: 0 },
  } as unknown as ClipMovement;
}

async function linkEvidence(
  models: string,
  place: string,
  { station, count, clip }: { readonly station: string; readonly count: string; readonly clip: number },
): Promise<void> {
  const options = getMovementOptions(buildPlan(0, '2025-09-01'), station);
  const put = (model: string, ending: string) => link(path.join(models, model), `${place}.${ending}`);
  await put('look.json', 'look.json');
  await put(`${station}.cards.json`, 'cards.json');
  await put(`${clip}.watch.json`, 'watch.json');
  await put('motion.bin', 'motion.bin');
  await put('stills.bin', 'stills.bin');
  await put(`${count}.bin`, `movement-${getOptionsKey(options)}.bin`);
}
