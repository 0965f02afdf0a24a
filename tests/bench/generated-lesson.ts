import { execFile } from 'node:child_process';
import { copyFile, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { getMovementOptions } from '../../src-core/app/clip-evidence.ts';
import type { ClipLook } from '../../src-core/evidence/clip-look.ts';
import {
  cardsAnalyser,
  lookAnalyser,
  motionAnalyser,
  stillsAnalyser,
  watchAnalyser,
} from '../../src-core/host/analysers.ts';
import { readSampleHash } from '../../src-core/host/content-hash.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { readClipMovement } from '../../src-core/host/read-clip-movement.ts';
import { watchClip } from '../../src-core/host/watch-clip.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { type Plan, planSchema } from '../../src-core/lesson/plan.ts';
import { buildPlanText } from '../../src-core/lesson-file/plan-file.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';

const SQUADS = 10;
const STATIONS = 30;
const START_MS = Date.parse('2025-05-15T13:00:00Z');
const SLOT_MS = 120_000;

/** Every how many clips a card is missing, so that matching has something to infer. */
const UNREAD_EVERY = 7;

/** What may differ in a generated lesson. */
interface GeneratedOptions {
  /** With all that watching the clips whole leaves, too. */
  readonly isWatched?: boolean;
  readonly plan?: Plan;
  readonly roster?: string;
}

/**
 * Writes a lesson of 300 clips into a folder: ten squads that walk thirty stations, every clip a real MP4 with its
 * own start and content, the cards' readings in the evidence cache as after a first look. Another plan gives other
 * squads and stations.
 */
export async function generateLesson(
  folder: string,
  ffmpeg: string,
  { isWatched = false, plan = buildPlan(), roster = buildRoster() }: GeneratedOptions = {},
): Promise<void> {
  const codes = plan.stations.map(({ code }) => code);
  await mkdir(path.join(folder, 'clips'), { recursive: true });
  await writeFile(path.join(folder, 'plan.json'), buildPlanText(plan));
  await writeFile(path.join(folder, 'roster.csv'), roster);
  const pattern = await filmPattern(path.join(folder, 'pattern.mp4'), ffmpeg);
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  if (isWatched) await watchPattern(folder, plan);
  for (const [squad, { name, route }] of plan.squads.entries()) {
    const home = path.join(folder, 'clips', name);
    await mkdir(home, { recursive: true });
    for (const [slot, station] of route.entries()) {
      const file = path.join(home, `IMG_${String(1000 + slot)}.MP4`);
      const serial = squad * codes.length + slot;
      await writeFile(file, dateClip(pattern, START_MS + slot * SLOT_MS, serial));
      const text = formatStationCard({ lesson: plan.lesson.code, station, revision: plan.lesson.revision });
      const isRead = (squad + slot) % UNREAD_EVERY > 0;
      const readings = isRead ? [0.2, 0.4].map((atSeconds) => ({ text, atSeconds })) : [];
      const id = (await readSampleHash(file)).slice(0, 16);
      await cache.write(id, cardsAnalyser, { readings, problems: [], how: 'searched' });
      await cache.write(id, lookAnalyser, buildLook(codes.indexOf(station)));
      if (isWatched) await copyWatched(folder, id, serial);
    }
  }
}

/** Watches the pattern once, as a clip by its own name. */
async function watchPattern(folder: string, plan: Plan): Promise<void> {
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  await watchClip(cache, { path: path.join(folder, 'pattern.mp4'), contentId: PATTERN });
  const [station = null] = plan.stations.map(({ code }) => code);
  const options = [getMovementOptions(plan, null), getMovementOptions(plan, station)];
  const counts = await Promise.all(options.map((one) => readClipMovement(cache, PATTERN, one)));
  const count = counts[1]?.reps.count;
  if (count !== REPS) throw new Error(`${count} reps counted in the pattern, which has ${REPS}`);
}

const PATTERN = 'pattern';

/** Gives a clip what was seen in the pattern, and changes of its own: no two clips show the same footage. */
async function copyWatched(folder: string, id: string, serial: number): Promise<void> {
  const evidence = path.join(folder, 'evidence');
  for (const name of await readdir(evidence)) {
    const [owner, ...rest] = name.split('.');
    const isCopied = owner === PATTERN && /^(stills|motion|movement)/.test(rest[0] ?? '');
    if (isCopied) await copyFile(path.join(evidence, name), path.join(evidence, [id, ...rest].join('.')));
  }
  const random = seededRandom(serial);
  const letter = () => String.fromCharCode('a'.charCodeAt(0) + Math.floor(random() * 15));
  await openEvidenceCache(evidence).write(id, watchAnalyser, {
    print: { seconds: Array.from({ length: 20 }, () => Array.from({ length: 72 }, letter).join('')) },
    problems: [],
    hasMotion: true,
    parts: { motion: motionAnalyser.version, stills: stillsAnalyser.version, look: lookAnalyser.version },
  });
}

/** A place of its own for each station, cell by cell. */
function buildLook(station: number): ClipLook {
  const cells = Array.from(
    { length: 16 * 9 * 7 },
    (_, at) => ((at * 31 + station * 57) % 97) - (at % 7 > 2 ? 0 : 20),
  );
  const place = { columns: 16, rows: 9, cells };
  return { durationSeconds: 12, place, movingColours: [], from: 'key-pictures' };
}

function buildPlan(): Plan {
  const codes = Array.from({ length: STATIONS }, (_, index) => `S${String(index + 1).padStart(2, '0')}`);
  return planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    lesson: {
      code: 'LONG',
      revision: 1,
      title: 'Long circuit',
      school: 'Cobble Quay School',
      className: '9 Kelp',
      date: '2025-05-15',
      period: 'p1',
    },
    zone: 'America/Halifax',
    periods: [{ code: 'p1', start: '09:50', end: '11:30' }],
    stations: codes.map((code) => ({ code, place: `Post ${code}`, exercise: 'Squat reaches', reps: 10 })),
    squads: Array.from({ length: SQUADS }, (_, squad) => {
      const route = codes.map((_, slot) => codes[(squad + slot) % STATIONS]);
      const name = `squad ${squad + 1}`;
      const pinnie = { name: `colour ${squad + 1}`, colour: '#1F8A86' };
      return {
        code: `s${squad + 1}`,
        name,
        pinnie,
        tablet: `tablet ${squad + 1}`,
        startsAt: route[0],
        route,
      };
    }),
    rubric: { clip: [{ code: 'place', label: 'Right place', checks: 'place' }] },
    orderRule: 'void-clip',
  });
}

function buildRoster(): string {
  const pupils = Array.from(
    { length: 45 },
    (_, at) => `k-${at},Given ${at},Family ${at},s${(at % SQUADS) + 1}`,
  );
  return ['id,given,family,squad', ...pupils, ''].join('\n');
}

/** Twenty seconds in which something goes to and fro, once a second. */
const REPS = 20;

async function filmPattern(file: string, ffmpeg: string): Promise<Buffer> {
  const source = ['-f', 'lavfi', '-i', `testsrc2=size=320x180:rate=15:duration=1`];
  const picture = [
    `color=c=gray:size=320x180:rate=15:duration=${REPS},noise=alls=8[ground]`,
    `[0:v]trim=end_frame=1,loop=-1:1,scale=100:80[thing]`,
    `[ground][thing]overlay=x='110+70*sin(2*PI*t)':y=60:shortest=1,format=yuv420p[out]`,
  ].join(';');
  const date = ['-metadata', 'creation_time=2025-05-15T13:00:00Z', '-movflags', 'faststart'];
  const wanted = ['-filter_complex', picture, '-map', '[out]', '-t', String(REPS)];
  await promisify(execFile)(ffmpeg, ['-v', 'error', '-y', ...source, ...wanted, ...date, file]);
  return readFile(file);
}

/** The pattern with another date in its movie header, and a free box at the end that makes its content its own. */
function dateClip(pattern: Buffer, startMs: number, serial: number): Buffer {
  const clip = Buffer.concat([pattern, Buffer.alloc(16)]);
  const seconds = Math.round(startMs / 1000) + 2_082_844_800;
  const header = clip.indexOf('mvhd') + 4;
  clip.writeUInt32BE(seconds, header + 4);
  clip.writeUInt32BE(seconds + 20, header + 8);
  clip.writeUInt32BE(16, pattern.length);
  clip.write('free', pattern.length + 4, 'latin1');
  clip.writeUInt32BE(serial, pattern.length + 8);
  return clip;
}
