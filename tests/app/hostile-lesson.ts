import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { writeSmallLesson } from '../contract/small-lesson.ts';

/** What a script would do that got to run in the page: {@link findHurt} looks for it. */
const SCRIPT = 'globalThis.hurt=1';
const IMAGE = `<img src=x onerror=${SCRIPT}>`;
const LONG_WORD = 'x'.repeat(190);

/** An expression for the page that is true where any of the lesson's texts was run as a program. */
export const HURT = '"hurt" in globalThis';

/**
 * The small lesson with texts that were written to do harm, wherever a plan, a roster or a tablet can bring them in:
 * markup with scripts, marks that turn the reading direction, words without end. It also has flags: a clip is missing,
 * two were filmed in the wrong order, one is nobody's.
 */
export async function writeHostileLesson(folder: string): Promise<void> {
  await writeSmallLesson(folder);
  const file = path.join(folder, 'plan.json');
  const plan = JSON.parse(await readFile(file, 'utf8'));
  plan.lesson.title = `<script>${SCRIPT}</script>Circuit`;
  plan.lesson.className = `${IMAGE}7 Brine`;
  plan.stations[0].place = IMAGE;
  plan.stations[1].place = '\u202Egnp.\u202Dexe\u2066';
  plan.stations[2].place = LONG_WORD;
  plan.stations[0].exercise = `"><svg onload=${SCRIPT}>`;
  plan.stations[1].clue = `javascript:${SCRIPT}`;
  plan.rubric.clip[0].label = `${IMAGE}Right place`;
  plan.rubric.squad[0].label = LONG_WORD;
  await writeFile(file, JSON.stringify(plan, null, 2));
  const pupils = [
    `k-1,"${IMAGE}",Marsh,teal`,
    `k-2,\u202EoB\u202C,Reed,amber`,
    `k-3,${'Ab'.repeat(5000)},${'long name '.repeat(40)},teal`,
    `k-4,"=HYPERLINK(""http://evil.example"")",Reed,amber`,
  ];
  await writeFile(path.join(folder, 'roster.csv'), `id,given,family,squad\n${pupils.join('\n')}\n`);
  const clips = path.join(folder, 'clips');
  await rename(path.join(clips, 'teal', 'IMG_1000.MP4'), path.join(clips, 'teal', `${IMAGE}.MP4`));
  await rm(path.join(clips, 'amber', 'IMG_1001.MP4'));
  await mkdir(path.join(clips, `<svg onload=${SCRIPT}>`), { recursive: true });
  await rename(
    path.join(clips, 'amber', 'IMG_1002.MP4'),
    path.join(clips, `<svg onload=${SCRIPT}>`, `\u202Evom.${'y'.repeat(150)}.MP4`),
  );
}
