import { appendFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { findLessonFolders } from '../../../../src-core/host/find-lesson-folders.ts';
import { gatherSummaries, refreshSummaries } from '../../../../src-core/host/look-back/gather-summaries.ts';
import { findSummary, makeSummary } from '../../../../src-core/host/look-back/lesson-summaries.ts';
import { getRawPlan } from '../../lesson/small-plan.ts';
import { movie } from '../../media/build-boxes.ts';
import { makeTemporaryFolder } from '../temporary-folder.ts';

/** Headers of a film of the lesson, and no picture. */
const TINY_FILM = movie({ created: Date.parse('2025-05-15T12:05:00Z') / 1000 + 2_082_844_800 });

const job = { signal: new AbortController().signal, onProgress: () => {} };

/** A lesson that was held, with one clip. */
function makeLesson(folder = makeTemporaryFolder()) {
  mkdirSync(path.join(folder, 'clips', 'Teal'), { recursive: true });
  writeFileSync(path.join(folder, 'plan.json'), JSON.stringify(getRawPlan()));
  writeFileSync(path.join(folder, 'roster.csv'), 'id,given,family,squad\nk-1,Odda,Quillfeather,teal\n');
  writeFileSync(path.join(folder, 'clips', 'Teal', 'IMG_0001.MOV'), TINY_FILM);
  return { folder, clipsFolder: path.join(folder, 'clips') };
}

const getState = async (place: ReturnType<typeof makeLesson>) => (await findSummary(place)).state;

describe('a lesson’s figures', () => {
  test('are made once and stay fresh while nothing changes', async () => {
    const place = makeLesson();
    expect(await findSummary(place)).toEqual({ summary: null, state: 'stale' });
    const made = await makeSummary(place, job);
    expect(await findSummary(place)).toEqual({ summary: made.ok && made.value, state: 'fresh' });
  });

  test.each<readonly [string, (folder: string) => void]>([
    ['a decision', (folder) => appendFileSync(path.join(folder, 'marks.jsonl'), '{}\n')],
    ['the plan', (folder) => appendFileSync(path.join(folder, 'plan.json'), '\n')],
    ['the roster', (folder) => appendFileSync(path.join(folder, 'roster.csv'), 'k-2,Bram,Reed,teal\n')],
    ['a clip', (folder) => writeFileSync(path.join(folder, 'clips', 'Teal', 'IMG_0002.MOV'), 'more')],
    [
      'a clip being watched',
      (folder) => {
        mkdirSync(path.join(folder, 'evidence'), { recursive: true });
        writeFileSync(path.join(folder, 'evidence', 'a.watch.json'), '{}');
      },
    ],
  ])('are stale after %s', async (_, change) => {
    const place = makeLesson();
    await makeSummary(place, job);
    change(place.folder);
    expect(await getState(place)).toBe('stale');
  });

  test('are shown, and why they were not kept, where they cannot be written', async () => {
    const place = makeLesson();
    mkdirSync(path.join(place.folder, 'summary.json'));
    const { summaries, problems } = await refreshSummaries(await gatherSummaries([place]), job);
    expect(summaries).toMatchObject([{ clips: 1 }]);
    expect(problems).toMatchObject([{ path: path.join(place.folder, 'summary.json') }]);
  });

  test('stand as they were when the films have gone, for no grading could give them again', async () => {
    const place = makeLesson();
    await makeSummary(place, job);
    rmSync(place.clipsFolder, { recursive: true });
    const before = readFileSync(path.join(place.folder, 'summary.json'));
    const { summaries } = await refreshSummaries(await gatherSummaries([place]), job);
    expect(await getState(place)).toBe('films-gone');
    expect(summaries.map(({ clips }) => clips)).toEqual([1]);
    expect(readFileSync(path.join(place.folder, 'summary.json'))).toEqual(before);
  });

  test('are made without decoding a clip that nobody has looked into: it is counted as unseen', async () => {
    const place = makeLesson();
    const made = await makeSummary(place, job);
    expect(made.ok && [made.value.clips, made.value.unseen]).toEqual([1, 1]);
    expect(existsSync(path.join(place.folder, 'evidence'))).toBe(false);
  });
});

describe('looking back over a folder', () => {
  test('finds lessons in years and classes, none within a lesson, and passes hidden folders over', async () => {
    const home = makeTemporaryFolder();
    for (const below of ['2025/9 Kelp/a', '2025/9 Kelp/b', 'b', '.hidden/c', 'b/clips/d'])
      makeLesson(path.join(home, below));
    const found = await findLessonFolders([home, path.join(home, 'b')]);
    expect(found.map((folder) => path.relative(home, folder))).toEqual([
      path.join('2025', '9 Kelp', 'a'),
      path.join('2025', '9 Kelp', 'b'),
      'b',
    ]);
    expect(await findLessonFolders([path.join(home, 'not there')])).toEqual([]);
  });

  test('names a lesson that cannot be opened, and shows the others', async () => {
    const [sound, broken] = [makeLesson(), makeLesson()];
    writeFileSync(path.join(broken.folder, 'plan.json'), '{');
    const { summaries, problems } = await refreshSummaries(await gatherSummaries([sound, broken]), job);
    expect(summaries).toHaveLength(1);
    expect(problems).toMatchObject([
      { code: 'lesson-left-out', path: broken.folder, because: { code: 'plan-not-json' } },
    ]);
  });

  test('grades again only what changed', async () => {
    const places = [makeLesson(), makeLesson()];
    await refreshSummaries(await gatherSummaries(places), job);
    appendFileSync(path.join(places[1]?.folder ?? '', 'plan.json'), '\n');
    const steps: object[] = [];
    const counting = { ...job, onProgress: (progress: object) => steps.push(progress) };
    await refreshSummaries(await gatherSummaries(places), counting);
    expect(steps).toEqual([{ step: 'figures', done: 1, total: 1 }]);
  });
});
