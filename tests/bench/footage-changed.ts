import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { findReps } from '../../src-core/evidence/reps.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { type CountPair, measureCounts } from './count-metrics.ts';
import { FOOTAGE, type FootageClip, findFootage, readFileMotion } from './footage.ts';
import type { BenchReport } from './report.ts';

const run = promisify(execFile);

/** An offset round the middle of what a crop leaves over, as a hand moves: -1 to 1 of it. */
const sway = (side: string, [slow, fast]: readonly [number, number]) =>
  `${side}*0.04*(1+0.5*sin(${slow}*t+1)+0.3*sin(${2.5 * slow}*t)+0.2*sin(${fast}*t))`;

/** What leaves the true count as it is, as filters of ffmpeg. */
const CHANGES = {
  mirrored: 'hflip',
  backwards: 'reverse',
  'a picture later': 'trim=start_frame=1,setpts=PTS-STARTPTS',
  cropped: 'crop=iw*0.88:ih*0.88:iw*0.04:ih*0.08',
  'dark and grainy': 'eq=brightness=-0.15:contrast=0.7,noise=alls=14:allf=t',
  'in a hand': `crop=iw*0.92:ih*0.92:${sway('iw', [2.1, 11.7])}:${sway('ih', [1.7, 13])}`,
  slower: 'setpts=1.25*PTS',
  faster: 'setpts=0.8*PTS',
  'thirty a second': 'fps=30',
  'twenty-five a second': 'fps=25',
  'badly compressed': 'null',
} as const;

type Change = keyof typeof CHANGES;

/**
 * Prints how well counting holds where real clips are changed in ways that leave their reps as they are: what is right
 * by luck on sixteen clips is wrong in some of them.
 */
export async function benchChangedFootage({ print }: BenchReport): Promise<void> {
  const clips = findFootage();
  const ffmpeg = await findFfmpeg();
  if (clips === null || !ffmpeg.ok) {
    print('reps, changed footage: left out, no ../shared/footage, or no ffmpeg');
    return;
  }
  const all: CountPair[] = [];
  for (const change of Object.keys(CHANGES) as Change[]) {
    const pairs: CountPair[] = [];
    for (const clip of clips) pairs.push(await countChanged(clip, change, ffmpeg.value.path));
    all.push(...pairs);
    const wrong = clips.flatMap(({ file, count }, at) => {
      const found = pairs[at]?.found ?? null;
      return Math.abs((found ?? 0) - count) > 1 ? [`${file.slice(0, 3)} ${found ?? 'none'} of ${count}`] : [];
    });
    print(`  ${change.padEnd(22)} ${describe(pairs)}  far off: ${wrong.join(', ')}`);
  }
  print(`reps, footage changed in ${Object.keys(CHANGES).length} ways: ${describe(all)}`);
}

async function countChanged(
  { file, count }: FootageClip,
  change: Change,
  ffmpeg: string,
): Promise<CountPair> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-footage-'));
  try {
    const changed = path.join(folder, 'clip.mp4');
    const quality = change === 'badly compressed' ? '36' : '16';
    const written = ['-an', '-c:v', 'libx264', '-preset', 'ultrafast', '-crf', quality, changed];
    await run(ffmpeg, ['-v', 'error', '-i', `${FOOTAGE}${file}`, '-vf', CHANGES[change], ...written]);
    const { count: found } = findReps(await readFileMotion(changed), { counting: 'cycle' });
    return { found, truth: count };
  } finally {
    await rm(folder, { recursive: true });
  }
}

function describe(pairs: readonly CountPair[]): string {
  const { mae, obo } = measureCounts(pairs);
  return `MAE ${mae.toFixed(3)}  OBO ${obo.toFixed(3)}`;
}
