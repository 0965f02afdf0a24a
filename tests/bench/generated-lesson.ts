import { execFile } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import type { ClipLook } from '../../src-core/evidence/clip-look.ts';
import { cardsAnalyser, lookAnalyser } from '../../src-core/host/analysers.ts';
import { readSampleHash } from '../../src-core/host/content-hash.ts';
import { openEvidenceCache } from '../../src-core/host/evidence-cache.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { planSchema } from '../../src-core/lesson/plan.ts';
import { buildPlanText } from '../../src-core/lesson-file/plan-file.ts';

const SQUADS = 10;
const STATIONS = 30;
const START_MS = Date.parse('2025-05-15T13:00:00Z');
const SLOT_MS = 120_000;

/** Every how many clips a card is missing, so that matching has something to infer. */
const UNREAD_EVERY = 7;

/**
 * Writes a lesson of 300 clips into a folder: ten squads that walk thirty stations, every clip a real MP4 with its
 * own start and content, the cards' readings in the evidence cache as after a first look.
 */
export async function generateLesson(folder: string, ffmpeg: string): Promise<void> {
  const codes = Array.from({ length: STATIONS }, (_, index) => `S${String(index + 1).padStart(2, '0')}`);
  await mkdir(path.join(folder, 'clips'), { recursive: true });
  await writeFile(path.join(folder, 'plan.json'), buildPlanText(buildPlan(codes)));
  await writeFile(path.join(folder, 'roster.csv'), buildRoster());
  const pattern = await filmPattern(path.join(folder, 'pattern.mp4'), ffmpeg);
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  for (let squad = 0; squad < SQUADS; squad += 1) {
    const home = path.join(folder, 'clips', `squad ${squad + 1}`);
    await mkdir(home, { recursive: true });
    for (let slot = 0; slot < STATIONS; slot += 1) {
      const file = path.join(home, `IMG_${String(1000 + slot)}.MP4`);
      await writeFile(file, dateClip(pattern, START_MS + slot * SLOT_MS, squad * STATIONS + slot));
      const station = codes[(squad + slot) % STATIONS] ?? '';
      const text = formatStationCard({ lesson: 'LONG', station, revision: 1 });
      const isRead = (squad + slot) % UNREAD_EVERY > 0;
      const readings = isRead ? [0.2, 0.4].map((atSeconds) => ({ text, atSeconds })) : [];
      const id = (await readSampleHash(file)).slice(0, 16);
      await cache.write(id, cardsAnalyser, { readings, problems: [], how: 'searched' });
      await cache.write(id, lookAnalyser, buildLook((squad + slot) % STATIONS));
    }
  }
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

function buildPlan(codes: readonly string[]) {
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

async function filmPattern(file: string, ffmpeg: string): Promise<Buffer> {
  const source = ['-f', 'lavfi', '-i', 'testsrc2=size=320x180:rate=15:duration=20'];
  const date = ['-metadata', 'creation_time=2025-05-15T13:00:00Z', '-movflags', 'faststart'];
  await promisify(execFile)(ffmpeg, ['-v', 'error', '-y', ...source, '-pix_fmt', 'yuv420p', ...date, file]);
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
