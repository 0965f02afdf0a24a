import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { expect, test, vi } from 'vitest';
import { openSession } from '../../../../src-core/host/desk/lesson-session.ts';
import { writeSmallLesson } from '../../../contract/small-lesson.ts';
import { makeTemporaryFolder } from '../temporary-folder.ts';

/**
 * Reads the six clips of the small lesson, whose cards were read before, by a clock that goes on by `stepMs` whenever it
 * is looked at: of each view with clips, how far the reading was and how many of them had their cards.
 */
async function readByClock(stepMs: number): Promise<readonly { state: string; cards: number }[]> {
  const folder = path.join(makeTemporaryFolder(), 'lesson');
  await mkdir(folder);
  await writeSmallLesson(folder);
  const shown: { state: string; cards: number }[] = [];
  const opened = await openSession({
    lesson: 'a lesson',
    folder,
    clipsFolder: null,
    second: null,
    onChange: () => shown.push(describe()),
  });
  if (!opened.ok) throw new Error('the small lesson opens');
  const session = opened.value;
  const describe = () => ({
    state: session.getView().reading.state,
    cards: session.getGraded().squads.flatMap(({ clips }) => clips.filter(({ reading }) => reading.card))
      .length,
  });
  let nowMs = 0;
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => {
    nowMs += stepMs;
    return nowMs;
  });
  try {
    await session.readClips.join({ signal: new AbortController().signal, onProgress: () => {} });
  } finally {
    clock.mockRestore();
  }
  return shown;
}

test('clips that were read before are shown once, with their cards, while a lesson opens', async () => {
  expect(await readByClock(0)).toEqual([
    { state: 'cards', cards: 6 },
    { state: 'read', cards: 6 },
  ]);
});

test('clips whose reading takes its time are shown as far as they are read', async () => {
  const shown = await readByClock(400);
  expect(shown.length).toBeGreaterThan(2);
  expect(shown[0]).toEqual({ state: 'cards', cards: 0 });
  expect(shown.at(-1)).toEqual({ state: 'read', cards: 6 });
});
