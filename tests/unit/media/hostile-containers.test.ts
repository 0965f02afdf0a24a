import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as joinPath } from 'node:path';
import { getHeapStatistics } from 'node:v8';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { chooseStamp } from '../../../src-core/intake/choose-stamp.ts';
import { READING_LIMITS } from '../../../src-core/media/bounded-bytes.ts';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { box, type CountingSource, join, metaKeys, movie, sourceOf, u16, u32, zeros } from './build-boxes.ts';
import { avi, chunk, list } from './build-chunks.ts';
import { dateUtc, ebmlHeader, element, info, segment, tags, tracks } from './build-elements.ts';
import { heic, jpeg, tiff } from './build-exif.ts';

// Every reader against files that lie: twenty thousand mutations of real files. Whatever comes, there is a stamp or
// a problem, never an exception; reads and bytes are counted, so that a hang shows as a number and not as a wait.

const MUTATIONS = 20_000;
const MOST_HEAP = 64 * 1024 * 1024;

interface Seed {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const built: readonly Seed[] = [
  {
    name: 'movie',
    bytes: movie({
      created: 3_855_305_106,
      inside: [
        metaKeys({
          'com.apple.quicktime.creationdate': '2026-03-02T09:05:06-0500',
          'com.android.version': '13',
        }),
        box('udta', box('©day', u16(24), u16(0), '2026-03-02T09:05:06-0500'), u32(0)),
      ],
    }),
  },
  {
    name: 'matroska',
    bytes: join(
      ebmlHeader(),
      segment(
        info(dateUtc(5n)),
        tracks(),
        tags({ DATE_RECORDED: '2026-03-02 14:05:06' }),
        element(0x1f43b675, zeros(99)),
      ),
    ),
  },
  {
    name: 'avi',
    bytes: avi(chunk('IDIT', 'Mon Mar 02 09:05:06 2026'), list('INFO', chunk('ICRD', '2026-03-02'))),
  },
  { name: 'jpeg', bytes: jpeg(tiff({ 271: 'Harbour' }, { 36867: '2026:03:02 09:05:06', 36881: '-05:00' })) },
  { name: 'heic', bytes: heic(tiff({ 271: 'Harbour' }, { 36867: '2026:03:02 09:05:06' })) },
];

/** The same kinds as a real encoder writes them, with real sample tables, cues and indexes. */
const ENCODED: readonly (readonly [string, readonly string[]])[] = [
  ['real.mp4', ['-c:v', 'mpeg4', '-movflags', 'faststart']],
  [
    'real.mov',
    [
      '-c:v',
      'mpeg4',
      '-movflags',
      'use_metadata_tags',
      '-metadata',
      'com.apple.quicktime.creationdate=2026-03-02T09:05:06-0500',
    ],
  ],
  ['fragments.mp4', ['-c:v', 'mpeg4', '-g', '10', '-movflags', 'frag_keyframe+empty_moov']],
  ['indexed.mp4', ['-c:v', 'mpeg4', '-g', '10', '-movflags', 'dash+global_sidx']],
  ['real.mkv', ['-c:v', 'mpeg4', '-metadata', 'DATE_RECORDED=2026-03-02 14:05:06']],
  ['real.avi', ['-c:v', 'mjpeg', '-metadata', 'date=2026-03-02 09:05:06']],
  ['real.jpg', ['-frames:v', '1']],
];

const folder = mkdtempSync(joinPath(tmpdir(), 'routemark-hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

const ffmpeg = await findFfmpeg();
const encoded: readonly Seed[] = ffmpeg.ok
  ? ENCODED.map(([name, options]) => {
      const file = joinPath(folder, name);
      const picture = ['-f', 'lavfi', '-i', 'testsrc2=size=32x32:rate=10:duration=3'];
      const date = ['-metadata', 'creation_time=2026-03-02T14:05:06Z'];
      execFileSync(ffmpeg.value.path, ['-v', 'error', '-y', ...picture, ...date, ...options, file]);
      return { name, bytes: new Uint8Array(readFileSync(file)) };
    })
  : [];
const seeds = [...built, ...encoded];

type Mutation =
  | { readonly kind: 'flip'; readonly at: number; readonly value: number }
  | { readonly kind: 'size'; readonly at: number; readonly value: number }
  | { readonly kind: 'cut'; readonly at: number }
  | { readonly kind: 'double'; readonly at: number; readonly length: number }
  | { readonly kind: 'blank'; readonly at: number; readonly length: number };

/** Where in a file, as a share of it: heads and tails more often than middles, for there the structure lies. */
const place = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 0, max: 0.05, noNaN: true }),
  fc.double({ min: 0.9, max: 1, noNaN: true }),
);
const nastySize = fc.constantFrom(
  0,
  1,
  2,
  7,
  8,
  9,
  15,
  16,
  0x7fff_ffff,
  0x8000_0000,
  0xffff_fff8,
  0xffff_ffff,
);
const flip = fc.record({
  kind: fc.constant('flip' as const),
  at: place,
  value: fc.integer({ min: 0, max: 255 }),
});
const size = fc.record({
  kind: fc.constant('size' as const),
  at: place,
  value: fc.oneof(nastySize, fc.integer({ min: 0, max: 70_000 })),
});
const cut = fc.record({ kind: fc.constant('cut' as const), at: place });
const stretch = <Kind extends 'double' | 'blank'>(kind: Kind, max: number) =>
  fc.record({ kind: fc.constant(kind), at: place, length: fc.integer({ min: 1, max }) });
/** Cuts seldom: after one there is little left to lie about. */
const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  { arbitrary: flip, weight: 6 },
  { arbitrary: size, weight: 6 },
  { arbitrary: stretch('double', 2000), weight: 3 },
  { arbitrary: stretch('blank', 200), weight: 3 },
  { arbitrary: cut, weight: 1 },
);

function mutate(bytes: Uint8Array, { at: share, ...change }: Mutation): Uint8Array {
  const at = Math.floor(share * bytes.length);
  switch (change.kind) {
    case 'flip': {
      const result = bytes.slice();
      result.fill(change.value, at, at + 1);
      return result;
    }
    case 'size': {
      // Before the next four letters, where boxes and chunks keep their sizes.
      const result = bytes.slice();
      const letters = findLetters(result, at);
      if (letters >= 4) result.set(u32(change.value), letters - 4);
      return result;
    }
    case 'cut':
      return bytes.slice(0, at);
    case 'double':
      return join(bytes.subarray(0, at), bytes.subarray(at, at + change.length), bytes.subarray(at));
    case 'blank': {
      const result = bytes.slice();
      result.fill(0, at, at + change.length);
      return result;
    }
  }
}

function findLetters(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 4 <= bytes.length; at += 1) {
    if (bytes.subarray(at, at + 4).every((byte) => byte >= 0x61 && byte <= 0x7a)) return at;
  }
  return -1;
}

async function judge(source: CountingSource) {
  const outcome = await readMedia(source);
  const stamp = chooseStamp({
    facts: outcome.ok ? outcome.value : null,
    fileName: 'IMG_0250.MOV',
    fileModifiedMs: null,
    zone: 'America/New_York',
    nowMs: Date.parse('2026-11-25T12:00:00Z'),
  });
  return { outcome, stamp };
}

describe(`files that lie${ffmpeg.ok ? '' : ' — built ones only: no ffmpeg that runs'}`, () => {
  test('unharmed, every seed is read', async () => {
    for (const { name, bytes } of seeds) {
      const { outcome } = await judge(sourceOf(bytes));
      expect([name, outcome.ok, outcome.problems]).toEqual([name, true, []]);
    }
  });

  test(`${MUTATIONS} mutations give a stamp or a problem, in bounded reads and bounded memory`, async () => {
    const most = { reads: 0, bytes: 0, largest: 0, heap: 0 };
    let stamped = 0;
    const property = fc.asyncProperty(
      fc.constantFrom(...seeds),
      fc.array(mutation, { minLength: 1, maxLength: 4 }),
      async (seed, mutations) => {
        const bytes = mutations.reduce(mutate, seed.bytes);
        const source = sourceOf(bytes);
        const heapBefore = getHeapStatistics().used_heap_size;
        const { outcome, stamp } = await judge(source);
        most.heap = Math.max(most.heap, getHeapStatistics().used_heap_size - heapBefore);
        most.reads = Math.max(most.reads, source.asked.reads);
        most.bytes = Math.max(most.bytes, source.asked.bytes);
        most.largest = Math.max(most.largest, source.asked.largest);
        if (stamp.readMs !== null || stamp.local !== null) stamped += 1;
        if (!outcome.ok && outcome.problems.length === 0) throw new Error('neither a value nor a problem');
        if (outcome.ok) checkFacts(outcome.value);
        if (Number.isNaN(stamp.startMs) || Number.isNaN(stamp.uncertaintySeconds))
          throw new Error('not a number');
      },
    );
    await fc.assert(property, { numRuns: MUTATIONS, seed: 20_261_125 });
    expect(most.reads).toBeLessThanOrEqual(READING_LIMITS.reads);
    expect(most.bytes).toBeLessThanOrEqual(READING_LIMITS.totalBytes);
    expect(most.largest).toBeLessThanOrEqual(READING_LIMITS.pieceBytes);
    expect(most.heap).toBeLessThan(MOST_HEAP);
    expect(stamped).toBeGreaterThan(MUTATIONS / 10);
  }, 120_000);
});

function checkFacts(facts: {
  durationSeconds: number | null;
  dates: readonly { instantMs: number | null }[];
}): void {
  const { durationSeconds, dates } = facts;
  if (durationSeconds !== null && !(Number.isFinite(durationSeconds) && durationSeconds > 0)) {
    throw new Error(`a length of ${durationSeconds}`);
  }
  for (const { instantMs } of dates) {
    if (instantMs !== null && Number.isNaN(new Date(instantMs).getTime()))
      throw new Error(`a date of ${instantMs}`);
  }
}
