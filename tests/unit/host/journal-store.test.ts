import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { openJournalStore } from '../../../src-core/host/journal-store.ts';
import {
  buildJournalLine,
  JOURNAL_HEADER,
  parseJournal,
} from '../../../src-core/lesson-file/journal-file.ts';
import { buildTestEvent, confirm } from '../marking/harbour.ts';
import { mountSmallDisk } from './small-disk.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const buildLine = (n: number) => buildJournalLine(buildTestEvent(n, confirm(`clip-${n}`)));

function openNew(folder = makeTemporaryFolder()) {
  const file = path.join(folder, 'marks.jsonl');
  return { file, folder, store: openJournalStore(file, JOURNAL_HEADER) };
}

const readLines = (file: string) => readFileSync(file, 'utf8').split('\n');

/** Events and problems of a journal on disk, through the reader of the format. */
function readJournal(file: string) {
  const outcome = parseJournal(readFileSync(file, 'utf8'));
  if (!outcome.ok) throw new Error('no journal');
  return { clips: outcome.value.map(({ what }) => 'clip' in what && what.clip), problems: outcome.problems };
}

describe('a journal on disk', () => {
  test('is not made by reading it', async () => {
    const { file, store } = openNew();
    expect(await store.read()).toEqual({ ok: true, value: '', problems: [] });
    expect(existsSync(file)).toBe(false);
  });

  test('begins with its header and grows line by line', async () => {
    const { file, store } = openNew();
    expect(await store.append([buildLine(1)])).toEqual({ ok: true, value: [], problems: [] });
    await store.append([buildLine(2), buildLine(3)]);
    expect(readLines(file)).toEqual([JOURNAL_HEADER, buildLine(1), buildLine(2), buildLine(3), '']);
    expect(await store.read()).toMatchObject({ value: readFileSync(file, 'utf8') });
  });

  test('takes appends asked for at once in the order asked', async () => {
    const { file, store } = openNew();
    const asked = Array.from({ length: 20 }, (_, n) => buildLine(n));
    await Promise.all(asked.map((line) => store.append([line])));
    expect(readLines(file)).toEqual([JOURNAL_HEADER, ...asked, '']);
  });

  test('closes off a torn last line and keeps it where it is', async () => {
    const { file, store } = openNew();
    await store.append([buildLine(1)]);
    const torn = buildLine(2).slice(0, 40);
    appendFileSync(file, torn);
    await store.append([buildLine(3)]);
    expect(readLines(file)).toEqual([JOURNAL_HEADER, buildLine(1), torn, buildLine(3), '']);
    expect(readJournal(file)).toMatchObject({
      clips: ['clip-1', 'clip-3'],
      problems: [{ code: 'journal-line-torn', line: 3 }],
    });
  });

  test('keeps a last line that lacks nothing but its end', async () => {
    const { file, store } = openNew();
    await store.append([buildLine(1)]);
    appendFileSync(file, buildLine(2));
    await store.append([buildLine(3)]);
    expect(readJournal(file)).toEqual({ clips: ['clip-1', 'clip-2', 'clip-3'], problems: [] });
  });

  test('recovers from a header that was cut off at any byte', async () => {
    for (const length of [1, 10, JOURNAL_HEADER.length - 1, JOURNAL_HEADER.length]) {
      const { file, store } = openNew();
      writeFileSync(file, JOURNAL_HEADER.slice(0, length));
      await store.append([buildLine(1)]);
      expect(readJournal(file).clips).toEqual(['clip-1']);
    }
  });

  test('hands over what others have written since it was last read', async () => {
    const { file, store } = openNew();
    await store.append([buildLine(1)]);
    const other = openJournalStore(file, JOURNAL_HEADER);
    await other.read();
    await other.append([buildLine(2)]);
    expect(await store.append([buildLine(3)])).toMatchObject({ ok: true, value: [buildLine(2)] });
    expect(await other.append([buildLine(4)])).toMatchObject({ ok: true, value: [buildLine(3)] });
  });

  test('follows when a sync program has put another file in its place', async () => {
    const { file, folder, store } = openNew();
    await store.append([buildLine(1), buildLine(2)]);
    const other = path.join(folder, 'from-elsewhere');
    writeFileSync(other, `${JOURNAL_HEADER}\n${buildLine(7)}\n`);
    renameSync(other, file);
    expect(await store.append([buildLine(3)])).toMatchObject({ ok: true, value: [buildLine(7)] });
    expect(readJournal(file).clips).toEqual(['clip-7', 'clip-3']);
  });

  test('starts anew when the file was taken away', async () => {
    const { file, store } = openNew();
    await store.append([buildLine(1)]);
    rmSync(file);
    expect(await store.append([buildLine(2)])).toMatchObject({ ok: true });
    expect(readLines(file)).toEqual([JOURNAL_HEADER, buildLine(2), '']);
  });

  test('keeps long lines and many of them whole', async () => {
    const { file, store } = openNew();
    const lines = Array.from({ length: 200 }, (_, n) => buildLine(n) + ' '.repeat(5000));
    expect(await store.append(lines)).toMatchObject({ ok: true });
    expect(readLines(file)).toEqual([JOURNAL_HEADER, ...lines, '']);
  });

  test('asks nothing of the disk for no lines', async () => {
    const { file, store } = openNew();
    expect(await store.append([])).toMatchObject({ ok: true, value: [] });
    expect(existsSync(file)).toBe(false);
  });
});

describe('a journal that cannot be written', () => {
  test('says that the folder is not there', async () => {
    const { store, file } = openNew(path.join(makeTemporaryFolder(), 'gone'));
    expect(await store.append([buildLine(1)])).toEqual({
      ok: false,
      problems: [{ code: 'folder-missing', path: file, cause: 'ENOENT' }],
    });
  });

  test('says that a folder stands in its place', async () => {
    const { store, file } = openNew();
    mkdirSync(file);
    expect(await store.append([buildLine(1)])).toMatchObject({
      ok: false,
      problems: [{ code: 'is-a-folder' }],
    });
    expect(await store.read()).toMatchObject({ ok: false, problems: [{ code: 'is-a-folder' }] });
  });

  test('on a disk that fills up midway acknowledges nothing that is not there, and goes on once there is room', async (context) => {
    const disk = mountSmallDisk(64);
    if (disk === null) return context.skip('no right to mount a small disk here');
    const { file, store } = openNew(disk);
    const filler = path.join(disk, 'filler');
    writeFileSync(filler, 'f'.repeat(40_000));
    const acknowledged: number[] = [];
    const refusals: unknown[] = [];
    for (let n = 0; n < 400 && refusals.length < 3; n += 1) {
      const outcome = await store.append([buildLine(n)]);
      if (outcome.ok) acknowledged.push(n);
      else refusals.push(outcome.problems);
    }
    expect(refusals).toHaveLength(3);
    expect(refusals[0]).toEqual([{ code: 'disk-full', path: file, cause: 'ENOSPC' }]);
    rmSync(filler);
    expect(await store.append([buildLine(900)])).toMatchObject({ ok: true });
    const { clips, problems } = readJournal(file);
    expect(clips).toEqual([...acknowledged, 900].map((n) => `clip-${n}`));
    expect(problems.every(({ code }) => code === 'journal-line-torn')).toBe(true);
  });
});

describe('two programs at one journal', () => {
  test('lose none of each other’s lines', async () => {
    const { file, folder } = openNew();
    const stores = [1, 2, 3, 4].map(() => openNew(folder).store);
    const outcomes = await Promise.all(
      stores.flatMap((store, at) =>
        Array.from({ length: 25 }, (_, n) => store.append([buildLine(at * 100 + n)])),
      ),
    );
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    const { clips, problems } = readJournal(file);
    expect(problems).toEqual([]);
    expect(new Set(clips).size).toBe(100);
    for (const at of [0, 1, 2, 3]) {
      const own = clips.filter((clip) => Math.floor(Number(String(clip).slice(5)) / 100) === at);
      expect(own).toEqual(Array.from({ length: 25 }, (_, n) => `clip-${at * 100 + n}`));
    }
  });
});
