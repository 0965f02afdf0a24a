import { type ChildProcessWithoutNullStreams, execFileSync, spawn } from 'node:child_process';
import { copyFile, mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { withFileBytes } from '../../src-core/host/file-byte-source.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { mapAll } from '../../src-core/host/map-all.ts';
import { chooseStamp } from '../../src-core/intake/choose-stamp.ts';
import { readMedia } from '../../src-core/media/read-media.ts';

const FILES = 300;
const ROUNDS = 10;
/** Files that both read before the clock starts. */
const WARM_UP = 100;

/** A file of every layout that tablets hand in; twelve seconds each. */
const LAYOUTS: Readonly<Record<string, readonly string[]>> = {
  'end.mp4': [],
  'front.mp4': ['-movflags', 'faststart'],
  'keys.mov': [
    '-movflags',
    'use_metadata_tags',
    '-metadata',
    'com.apple.quicktime.creationdate=2026-03-02T09:05:06-0500',
  ],
  'fragments.mp4': ['-movflags', 'frag_keyframe+empty_moov'],
  'tagged.mkv': ['-metadata', 'DATE_RECORDED=2026-03-02 14:05:06'],
};

/**
 * Prints our time per stamp beside ExifTool's, both over the same 300 files, in turns of 30 within one run. ExifTool
 * is one process that stays open, asked for the dates and the length alone, thirty files at a time; both are warm.
 */
export async function benchStamps(print: (line: string) => void): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return print('stamps: skipped, no ffmpeg that runs');
  const folder = await mkdtemp(join(tmpdir(), 'routemark-bench-'));
  const exiftool = startExifTool();
  try {
    const files = await makeFiles(folder, ffmpeg.value.path);
    await exiftool.read(files.slice(0, WARM_UP));
    await readOurs(files.slice(0, WARM_UP));
    let oursMs = 0;
    let theirsMs = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const batch = files.slice((round * FILES) / ROUNDS, ((round + 1) * FILES) / ROUNDS);
      oursMs += await time(() => readOurs(batch));
      theirsMs += await time(() => exiftool.read(batch));
    }
    print(
      `stamps of ${FILES} clips: ours ${(oursMs / FILES).toFixed(2)} ms a file, ExifTool in one batched process ` +
        `${(theirsMs / FILES).toFixed(2)} ms a file: ${(theirsMs / oursMs).toFixed(1)} times as fast (at least 10)`,
    );
  } finally {
    exiftool.stop();
    await rm(folder, { recursive: true });
  }
}

async function makeFiles(folder: string, ffmpeg: string): Promise<readonly string[]> {
  const layouts = Object.entries(LAYOUTS).map(([name, options]) => {
    const file = join(folder, name);
    const picture = ['-f', 'lavfi', '-i', 'testsrc2=size=160x120:rate=30:duration=12'];
    const sound = ['-f', 'lavfi', '-i', 'sine=duration=12'];
    const codec = [
      '-c:v',
      'mpeg4',
      '-q:v',
      '12',
      '-g',
      '30',
      '-c:a',
      'aac',
      '-metadata',
      'creation_time=2026-03-02T14:05:06Z',
    ];
    execFileSync(ffmpeg, ['-v', 'error', '-y', ...picture, ...sound, ...codec, ...options, file]);
    return file;
  });
  const copies = Array.from({ length: FILES }, (_, index) => ({
    from: layouts[index % layouts.length] ?? '',
    to: join(
      folder,
      `IMG_${String(index + 1).padStart(4, '0')}-${basename(layouts[index % layouts.length] ?? '')}`,
    ),
  }));
  for (const { from, to } of copies) await copyFile(from, to);
  return copies.map(({ to }) => to);
}

/** As the app reads them: a few files at once. */
async function readOurs(files: readonly string[]): Promise<void> {
  await mapAll(files, async (file) => {
    const outcome = await withFileBytes(file, readMedia);
    const stamp = chooseStamp({
      facts: outcome.ok ? outcome.value : null,
      fileName: basename(file),
      fileModifiedMs: null,
      zone: 'America/New_York',
      nowMs: Date.parse('2026-11-25T12:00:00Z'),
    });
    if (stamp.source === 'none') throw new Error(`no stamp for ${file}`);
  });
}

/** ExifTool as it is fastest: a process that stays open and answers many files at once. */
function startExifTool() {
  const program = createRequire(import.meta.url).resolve('exiftool-vendored.pl/bin/exiftool');
  const child: ChildProcessWithoutNullStreams = spawn(program, ['-stay_open', 'True', '-@', '-']);
  child.stdout.setEncoding('utf8');
  return {
    async read(files: readonly string[]): Promise<void> {
      const tags = [
        '-fast',
        '-j',
        '-CreateDate',
        '-CreationDate',
        '-DateTimeOriginal',
        '-ContentCreateDate',
        '-Duration#',
      ];
      let text = '';
      const answered = new Promise<void>((resolve, reject) => {
        child.on('error', reject);
        child.stdout.on('data', function onData(piece: string) {
          text += piece;
          if (!text.includes('{ready}')) return;
          child.stdout.off('data', onData);
          child.off('error', reject);
          resolve();
        });
      });
      child.stdin.write(`${[...tags, ...files].join('\n')}\n-execute\n`);
      await answered;
      const answers = JSON.parse(text.replace('{ready}', '')) as unknown[];
      if (answers.length !== files.length) throw new Error('ExifTool left files out');
    },
    stop() {
      child.stdin.end('-stay_open\nFalse\n');
    },
  };
}

async function time(work: () => Promise<void>): Promise<number> {
  const startMs = performance.now();
  await work();
  return performance.now() - startMs;
}
