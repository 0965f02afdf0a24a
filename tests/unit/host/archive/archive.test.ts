import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { finished } from 'node:stream/promises';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { openHashTap } from '../../../../src-core/host/archive/hash-tap.ts';
import { restoreArchive } from '../../../../src-core/host/archive/restore-archive.ts';
import { writeArchive } from '../../../../src-core/host/archive/write-archive.ts';
import { buildManifestText, MANIFEST_NAME } from '../../../../src-core/lesson-file/archive-manifest.ts';
import { makeTemporaryFolder } from '../temporary-folder.ts';

const job = () => ({ signal: new AbortController().signal, onProgress: () => {} });
const LESSON = { title: 'Harbour circuit', className: '9 Kelp', date: '2025-05-15' };
const CLIP = 'clips/Téal squad/IMG_0412.MOV';
const CLIP_MS = Date.parse('2025-05-15T12:05:07.000Z');

function put(folder: string, file: string, text: string | Uint8Array = `what ${file} holds`) {
  const place = path.join(folder, file);
  mkdirSync(path.dirname(place), { recursive: true });
  writeFileSync(place, text);
}

function makeLesson() {
  const home = makeTemporaryFolder();
  const folder = path.join(home, 'lesson');
  for (const file of ['plan.json', 'roster.csv', 'marks.jsonl', 'my notes.txt', 'evidence/a.look.json'])
    put(folder, file);
  put(
    folder,
    CLIP,
    new Uint8Array(300_000).map((_, at) => (at * at) % 251),
  );
  utimesSync(path.join(folder, CLIP), new Date(CLIP_MS), new Date(CLIP_MS));
  put(folder, 'evidence/proxies/a.v1.mp4');
  put(folder, '.routemark-1-abc.tmp');
  return { home, folder, file: path.join(home, 'kept.zip'), again: path.join(home, 'again') };
}

type Made = ReturnType<typeof makeLesson>;

const keep = ({ folder, file }: Made, withClips = true) =>
  writeArchive({ folder, file, lesson: LESSON, withClips, made: '2025-06-01T08:00:00.000Z' }, job());

const restore = ({ file, again }: Made, onlyWhole = false) =>
  restoreArchive({ file, folder: again, onlyWhole }, job());

const listAll = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .sort();

const WHOLE = [CLIP, 'evidence/a.look.json', 'marks.jsonl', 'my notes.txt', 'plan.json', 'roster.csv'];

/** The archive with some of its files changed, packed anew by another program’s packer. */
function repack({ file }: Made, change: (files: Record<string, Uint8Array>) => void) {
  const files = unzipSync(readFileSync(file));
  change(files);
  writeFileSync(file, zipSync(files));
}

describe('an archive', () => {
  test('brings a lesson back byte for byte, with the dates of its clips and the teacher’s own files', async () => {
    const made = makeLesson();
    expect(await keep(made)).toMatchObject({ ok: true, value: { files: 6 }, problems: [] });
    expect(await restore(made)).toMatchObject({ ok: true, value: { files: 6 }, problems: [] });
    expect(listAll(made.again)).toEqual(WHOLE.toSorted());
    for (const file of WHOLE) {
      const bytes = readFileSync(path.join(made.again, file));
      expect(bytes.equals(readFileSync(path.join(made.folder, file))), file).toBe(true);
    }
    expect(statSync(path.join(made.again, CLIP)).mtimeMs).toBe(CLIP_MS);
    expect(readdirSync(made.home).sort()).toEqual(['again', 'kept.zip', 'lesson']);
  });

  test('is a zip that other programs read and find sound', async () => {
    const made = makeLesson();
    await keep(made);
    const script =
      'import sys,zipfile;z=zipfile.ZipFile(sys.argv[1]);print(z.testzip());print(sorted(z.namelist()))';
    const [sound, names] = execFileSync('python3', ['-c', script, made.file], { encoding: 'utf8' }).split(
      '\n',
    );
    expect(sound).toBe('None');
    expect(names).toContain(CLIP);
  });

  test('without clips has no film, and no film made for the window', async () => {
    const made = makeLesson();
    await keep(made, false);
    await restore(made);
    expect(listAll(made.again)).toEqual(WHOLE.filter((file) => file !== CLIP).toSorted());
  });

  test.each([
    ['before 1970', Date.UTC(1969, 11, 31, 20)],
    ['from a clock that counts from 1904', Date.UTC(1904, 0, 1)],
    ['in another century', Date.UTC(2140, 5, 1)],
  ])('keeps a file dated %s, and its date', async (_, dateMs) => {
    const made = makeLesson();
    utimesSync(path.join(made.folder, CLIP), new Date(dateMs), new Date(dateMs));
    expect(await keep(made)).toMatchObject({ ok: true, problems: [] });
    expect(await restore(made)).toMatchObject({ ok: true, problems: [] });
    expect(statSync(path.join(made.again, CLIP)).mtimeMs).toBe(dateMs);
  });

  test('says that it holds clips where it does: not without them, and not where they lie outside the lesson', async () => {
    const made = makeLesson();
    expect(await keep(made)).toMatchObject({ value: { holdsClips: true } });
    rmSync(made.file);
    renameSync(path.join(made.folder, 'clips'), path.join(made.folder, 'Clips'));
    expect(await keep(made, false)).toMatchObject({ value: { holdsClips: false } });
    rmSync(made.file);
    const clipsFolder = path.join(made.home, 'films');
    renameSync(path.join(made.folder, 'Clips'), clipsFolder);
    const order = { folder: made.folder, file: made.file, lesson: LESSON, made: '2025-06-01T08:00:00.000Z' };
    expect(await writeArchive({ ...order, withClips: true, clipsFolder }, job())).toMatchObject({
      value: { holdsClips: false },
      problems: [{ code: 'archive-left-out', path: clipsFolder, why: 'outside' }],
    });
  });

  test('names the links that it leaves out, and follows none', async () => {
    const made = makeLesson();
    symlinkSync('/etc', path.join(made.folder, 'clips', 'elsewhere'));
    const kept = await keep(made);
    expect(kept.problems).toEqual([{ code: 'archive-left-out', path: 'clips/elsewhere', why: 'link' }]);
    await restore(made);
    expect(existsSync(path.join(made.again, 'clips', 'elsewhere'))).toBe(false);
  });

  test('is never written over another file, nor into the lesson itself', async () => {
    const made = makeLesson();
    writeFileSync(made.file, 'the teacher’s own');
    expect((await keep(made)).problems).toMatchObject([{ code: 'archive-exists' }]);
    expect(readFileSync(made.file, 'utf8')).toBe('the teacher’s own');
    const within = { ...made, file: path.join(made.folder, 'kept.zip') };
    expect((await keep(within)).problems).toMatchObject([{ code: 'archive-within-lesson' }]);
  });

  test('leaves nothing behind when it is stopped', async () => {
    const made = makeLesson();
    const stopper = new AbortController();
    const stopped = writeArchive(
      { folder: made.folder, file: made.file, lesson: LESSON, withClips: true, made: '2025-06-01T08:00:00Z' },
      { signal: stopper.signal, onProgress: () => stopper.abort() },
    );
    await expect(stopped).rejects.toThrow();
    expect(readdirSync(made.home)).toEqual(['lesson']);
  });
});

describe('restoring', () => {
  test('goes into an empty folder, and into none that holds anything', async () => {
    const made = makeLesson();
    await keep(made);
    mkdirSync(made.again);
    expect((await restore(made)).ok).toBe(true);
    const before = listAll(made.again);
    expect((await restore(made)).problems).toMatchObject([{ code: 'restore-place-taken' }]);
    expect(listAll(made.again)).toEqual(before);
    const onFile = { ...made, again: path.join(made.folder, 'plan.json') };
    expect((await restore(onFile)).problems).toMatchObject([{ code: 'restore-place-taken' }]);
  });

  test('of a damaged archive names the file and restores nothing, or what is whole where that is asked for', async () => {
    const made = makeLesson();
    await keep(made);
    repack(made, (files) => {
      files['marks.jsonl'] = strToU8('other decisions');
    });
    const damage = [{ code: 'archive-damaged', path: made.file, files: ['marks.jsonl'], whole: 5 }];
    expect(await restore(made)).toEqual({ ok: false, problems: damage });
    expect(readdirSync(made.home).sort()).toEqual(['kept.zip', 'lesson']);
    expect(await restore(made, true)).toMatchObject({ ok: true, value: { files: 5 }, problems: damage });
    expect(listAll(made.again)).not.toContain('marks.jsonl');
  });

  test('finds one flipped bit anywhere in a clip, and a file that was taken out', async () => {
    const made = makeLesson();
    await keep(made);
    const bytes = readFileSync(made.file);
    const [at, whole] = [bytes.indexOf('IMG_0412.MOV') + 100_000, Buffer.from(bytes)];
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    writeFileSync(made.file, bytes);
    expect((await restore(made)).problems).toMatchObject([{ code: 'archive-damaged', files: [CLIP] }]);
    writeFileSync(made.file, whole);
    repack(made, (files) => delete files['roster.csv']);
    expect((await restore(made)).problems).toMatchObject([
      { code: 'archive-damaged', files: ['roster.csv'] },
    ]);
  });

  test.each([0.1, 0.5, 0.99])('of an archive cut at %d says so and restores nothing', async (share) => {
    const made = makeLesson();
    await keep(made);
    truncateSync(made.file, Math.floor(statSync(made.file).size * share));
    expect((await restore(made, true)).problems).toEqual([{ code: 'archive-cut-short', path: made.file }]);
    expect(existsSync(made.again)).toBe(false);
  });

  test('tells what is no archive of a lesson, and what is not there', async () => {
    const made = makeLesson();
    expect((await restore(made)).problems).toMatchObject([{ code: 'path-missing' }]);
    writeFileSync(made.file, 'no zip at all, and longer than the end of one');
    expect((await restore(made)).problems).toMatchObject([{ code: 'archive-not-ours' }]);
    writeFileSync(made.file, zipSync({ 'plan.json': strToU8('{}') }));
    expect((await restore(made)).problems).toMatchObject([{ code: 'archive-not-ours' }]);
    const newer = buildManifestText({
      made: '2025-06-01T08:00:00Z',
      lesson: LESSON,
      holdsClips: true,
      files: [],
    });
    writeFileSync(
      made.file,
      zipSync({ [MANIFEST_NAME]: strToU8(newer.replace('"version": 1', '"version": 2')) }),
    );
    expect((await restore(made)).problems).toMatchObject([{ code: 'archive-newer', version: 2 }]);
  });

  // The names of zip slip, as archives have carried them (Snyk Security Research, "Zip Slip Vulnerability", 2018).
  test.each([
    '../plan.json',
    'clips/../../plan.json',
    '/tmp/plan.json',
    '..\\plan.json',
    'C:/plan.json',
    'a//b',
  ])('unpacks nothing where a name leads elsewhere: %s', async (name) => {
    const made = makeLesson();
    await keep(made);
    repack(made, (files) => {
      const list = JSON.parse(Buffer.from(files[MANIFEST_NAME] ?? []).toString('utf8'));
      list.files[0].path = name;
      files[MANIFEST_NAME] = strToU8(JSON.stringify(list));
      files[name] = strToU8('slipped');
    });
    expect((await restore(made, true)).problems).toMatchObject([{ code: 'archive-unsafe' }]);
    expect(readdirSync(made.home).sort()).toEqual(['kept.zip', 'lesson']);
  });

  test('unpacks nothing where the archive holds what its list does not have', async () => {
    const made = makeLesson();
    await keep(made);
    repack(made, (files) => {
      files['stranger.txt'] = strToU8('x');
    });
    expect((await restore(made)).problems).toMatchObject([{ code: 'archive-unsafe', name: 'stranger.txt' }]);
  });

  test('leaves nothing behind when it is stopped', async () => {
    const made = makeLesson();
    await keep(made);
    const stopper = new AbortController();
    const order = { file: made.file, folder: made.again, onlyWhole: true };
    await expect(
      restoreArchive(order, { signal: stopper.signal, onProgress: () => stopper.abort() }),
    ).rejects.toThrow();
    expect(readdirSync(made.home).sort()).toEqual(['kept.zip', 'lesson']);
  });
});

test('what went through a tap is told before its reader hears of the end, or the list would go out without it', async () => {
  const order: string[] = [];
  const tap = openHashTap(
    () => {},
    ({ bytes }) => order.push(`${bytes} bytes`),
  );
  tap.on('end', () => order.push('end'));
  Readable.from([Buffer.from('the last '), Buffer.from('file')])
    .pipe(tap)
    .resume();
  await finished(tap);
  expect(order).toEqual(['13 bytes', 'end']);
});
