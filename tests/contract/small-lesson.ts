import { execFile } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { cardsAnalyser, lookAnalyser } from '../../src-core/host/analysers.ts';
import { readSampleHash } from '../../src-core/host/content-hash.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { planSchema } from '../../src-core/lesson/plan.ts';
import { buildPlanText } from '../../src-core/lesson-file/plan-file.ts';

const START_MS = Date.parse('2025-05-15T13:00:00Z');
const STATIONS = ['A', 'B', 'C'];

/** A test picture is no place, and nobody moves in it. */
const LOOK = { durationSeconds: 3, place: null, movingColours: [], from: 'key-pictures' } as const;

/** The plan of the small lesson: two squads on three stations. */
function buildSmallLessonPlan() {
  return planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    lesson: {
      code: 'SMALL',
      revision: 1,
      title: 'Small circuit',
      school: 'Cobble Quay School',
      className: '7 Brine',
      date: '2025-05-15',
      period: 'p1',
    },
    zone: 'America/Halifax',
    periods: [{ code: 'p1', start: '09:50', end: '11:30' }],
    stations: STATIONS.map((code) => ({ code, place: `Post ${code}`, exercise: 'Squat reaches', reps: 5 })),
    squads: ['teal', 'amber'].map((code, at) => {
      const route = STATIONS.map((_, slot) => STATIONS[(at + slot) % STATIONS.length]);
      const pinnie = { name: `${code} pinnie`, colour: '#1F8A86' };
      return { code, name: code, pinnie, tablet: `tablet ${at + 1}`, startsAt: route[0], route };
    }),
    rubric: {
      clip: [
        { code: 'place', label: 'Right place', checks: 'place' },
        { code: 'together', label: 'Together', checks: 'judgement' },
      ],
      squad: [{ code: 'care', label: 'Care', maxPoints: 2 }],
    },
    orderRule: 'void-clip',
    tolerances: { shortestClipSeconds: 1 },
  });
}

/**
 * Writes the small lesson: six clips of three seconds unless told, real films with their own dates, whose cards and
 * looks stand in the evidence cache as after a first look.
 */
export async function writeSmallLesson(folder: string, lengthSeconds = 3): Promise<void> {
  const plan = buildSmallLessonPlan();
  await mkdir(path.join(folder, 'clips'), { recursive: true });
  await writeFile(path.join(folder, 'plan.json'), buildPlanText(plan));
  const roster = 'id,given,family,squad\nk-1,Ada,Marsh,teal\nk-2,Bo,Reed,amber\n';
  await writeFile(path.join(folder, 'roster.csv'), roster);
  const film = await getPattern(path.join(path.dirname(folder), 'pattern.mp4'), lengthSeconds);
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  for (const [squad, { code, route }] of plan.squads.entries()) {
    const home = path.join(folder, 'clips', code);
    await mkdir(home, { recursive: true });
    for (const [slot, station] of route.entries()) {
      const file = path.join(home, `IMG_${1000 + slot}.MP4`);
      await writeFile(file, dateClip(film, START_MS + slot * 120_000, squad * 10 + slot));
      const text = formatStationCard({ lesson: 'SMALL', station, revision: 1 });
      const readings = [0.2, 0.4].map((atSeconds) => ({ text, atSeconds }));
      const id = (await readSampleHash(file)).slice(0, 16);
      await cache.write(id, cardsAnalyser, { readings, problems: [], how: 'searched' });
      await cache.write(id, lookAnalyser, LOOK);
    }
  }
}

const filmed = new Map<number, Promise<Buffer>>();

/** The film of this length, made once a process: what tells the clips apart is written into copies of it. */
function getPattern(file: string, lengthSeconds: number): Promise<Buffer> {
  const film = filmed.get(lengthSeconds) ?? filmPattern(file, lengthSeconds);
  filmed.set(lengthSeconds, film);
  return film;
}

/** A film with a key picture each second. */
async function filmPattern(file: string, lengthSeconds: number): Promise<Buffer> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) throw new Error('these tests need ffmpeg');
  const source = ['-f', 'lavfi', '-i', `testsrc2=size=160x90:rate=10:duration=${lengthSeconds}`];
  const rest = ['-g', '10', '-pix_fmt', 'yuv420p', '-metadata', 'creation_time=2025-05-15T13:00:00Z'];
  await promisify(execFile)(ffmpeg.value.path, [
    '-v',
    'error',
    '-y',
    ...source,
    ...rest,
    '-movflags',
    'faststart',
    file,
  ]);
  return readFile(file);
}

/** The film with another date in its movie header, and a free box at its end that makes its content its own. */
function dateClip(film: Buffer, startMs: number, serial: number): Buffer {
  const clip = Buffer.concat([film, Buffer.alloc(16)]);
  const seconds = Math.round(startMs / 1000) + 2_082_844_800;
  const header = clip.indexOf('mvhd') + 4;
  clip.writeUInt32BE(seconds, header + 4);
  clip.writeUInt32BE(seconds + 3, header + 8);
  clip.writeUInt32BE(16, film.length);
  clip.write('free', film.length + 4, 'latin1');
  clip.writeUInt32BE(serial, film.length + 8);
  return clip;
}
