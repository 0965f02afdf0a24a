import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildLookBack, listSections } from '../../src-core/app/look-back.ts';
import { findLessonFolders } from '../../src-core/host/find-lesson-folders.ts';
import { gatherSummaries, refreshSummaries } from '../../src-core/host/look-back/gather-summaries.ts';
import { mapAll } from '../../src-core/host/map-all.ts';
import { generateYear, YEAR } from './generated-year.ts';
import { measureRoutemark } from './memory.ts';
import type { BenchReport } from './report.ts';

const ROUNDS = 5;
const LESSONS = YEAR.classes * YEAR.days;
const CLIPS = LESSONS * YEAR.squads * YEAR.stations;

const job = { signal: new AbortController().signal, onProgress: () => {} };

/**
 * Prints how long a year of 900 lessons and 45,000 clips takes to be looked back on: all of it graded for the first
 * time; then opened from what is kept, as the window does, beside reading the same files and listing the same folders
 * with nothing but the file system, in turns within one run; and by the command line, with the memory it holds.
 */
export async function benchLookBack({ print, hold }: BenchReport): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-'));
  try {
    await generateYear(folder);
    const first = await measureRoutemark(['look-back', folder, '--csv']);
    const rows = first.stdout.trimEnd().split('\r\n').length - 1;
    if (rows !== LESSONS * YEAR.squads) throw new Error(`${rows} rows of figures`);
    print(
      `look-back of ${LESSONS} lessons, graded for the first time: ${first.seconds.toFixed(0)} s, ` +
        `${((first.seconds / LESSONS) * 1000).toFixed(0)} ms a lesson, ${(first.bytes / 1e6).toFixed(0)} MB`,
    );
    const ours: number[] = [];
    const bare: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      ours.push(await time(() => open(folder)));
      bare.push(await time(() => readBare(folder)));
    }
    const seconds = getMedian(ours);
    hold({ what: `look-back of ${CLIPS} clips opened, s`, figure: seconds, bar: ['at most', 2] });
    print(
      `that is ${(seconds / getMedian(bare)).toFixed(2)} of reading the same files with the file system alone`,
    );
    const again = await measureRoutemark(['look-back', folder, '--csv']);
    if (again.stdout !== first.stdout) throw new Error('other figures than at first');
    print(`by the command line, its start included: ${again.seconds.toFixed(1)} s`);
    const most = Math.max(first.bytes, again.bytes) / 1e6;
    hold({ what: 'look-back, memory at the most, MB', figure: most, bar: ['at most', 500], digits: 0 });
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function open(folder: string): Promise<void> {
  const places = (await findLessonFolders([folder])).map((lesson) => ({
    folder: lesson,
    clipsFolder: path.join(lesson, 'clips'),
  }));
  const gathered = await gatherSummaries(places);
  if (gathered.some(({ state }) => state !== 'fresh')) throw new Error('a lesson is to be graded again');
  const { summaries } = await refreshSummaries(gathered, job);
  const sections = listSections(summaries).map(buildLookBack);
  const lessons = sections.reduce((sum, { whole }) => sum + whole.points.points.length, 0);
  if (sections.length !== YEAR.classes || lessons !== LESSONS) throw new Error(`${lessons} lessons`);
}

/** The same folders listed and the same files read, and nothing made of them. */
async function readBare(folder: string): Promise<void> {
  const classes = (await readdir(folder)).filter((name) => !name.startsWith('.'));
  const lessons = await Promise.all(
    classes.map(async (name) =>
      (await readdir(path.join(folder, name))).map((day) => path.join(folder, name, day)),
    ),
  );
  await mapAll(lessons.flat(), async (lesson) => {
    await readdir(lesson, { withFileTypes: true });
    await readdir(path.join(lesson, 'clips'), { recursive: true, withFileTypes: true });
    const names = ['plan.json', 'roster.csv', 'marks.jsonl', 'summary.json'];
    await Promise.all(names.map((name) => readFile(path.join(lesson, name))));
  });
}

async function time(work: () => Promise<void>): Promise<number> {
  const beganMs = performance.now();
  await work();
  return (performance.now() - beganMs) / 1000;
}

function getMedian(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
