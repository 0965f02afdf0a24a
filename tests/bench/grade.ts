import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { generateLesson } from './generated-lesson.ts';

const ROUNDS = 5;

/**
 * Prints the processor time that grading 300 scanned clips takes of our own process, the very first time and
 * the median after it, beside the time to read and hash the same files whole (SHA-256), in turns within one run.
 */
export async function benchGrade(print: (line: string) => void): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return print('grade: skipped, no ffmpeg that runs');
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-'));
  try {
    await generateLesson(folder, ffmpeg.value.path);
    const ours: number[] = [];
    const reading: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      ours.push(await timeCpu(() => grade(folder)));
      reading.push(await timeCpu(() => hashWhole(folder)));
    }
    const [first = 0, ...later] = ours;
    const median = getMedian(later);
    print(
      `grade of 300 scanned clips: ${first.toFixed(2)} s of processor time at first, ${median.toFixed(2)} s after ` +
        `(below 1); ${(median / getMedian(reading)).toFixed(2)} of reading and hashing the same files whole`,
    );
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function grade(folder: string): Promise<void> {
  const { signal } = new AbortController();
  const ports = openLessonPorts({ folder, signal });
  const lesson = await openLesson(ports);
  if (!lesson.ok) throw new Error('the generated lesson does not open');
  const graded = await gradeLesson(ports, lesson.value, { signal, onProgress: () => {} });
  const open = graded.flags.filter(({ asks }) => asks);
  const placed = graded.squads.flatMap(({ clips }) => clips).length;
  if (placed !== 300 || open.length > 0) throw new Error(`${placed} clips placed, ${open.length} flags`);
}

async function hashWhole(folder: string): Promise<void> {
  const { signal } = new AbortController();
  const ports = openLessonPorts({ folder, signal });
  const { files } = await ports.listClips();
  await ports.mapAll(files, async ({ path: relative }) => {
    const bytes = await readFile(path.join(folder, 'clips', relative));
    createHash('sha256').update(bytes).digest('hex');
  });
}

async function timeCpu(work: () => Promise<void>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

function getMedian(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
