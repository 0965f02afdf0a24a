import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { deleteHoldings, listHoldings } from '../../../src-core/host/lesson-holdings.ts';
import { parseDeletionLog } from '../../../src-core/lesson-file/deletion-log.ts';
import { buildKeepingText, isOverdue, parseKeeping } from '../../../src-core/lesson-file/keeping-file.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const stamp = { who: 'Ms Skerry', at: '2025-08-01T09:00:00.000Z' };

function put(folder: string, file: string, text = 'x') {
  const place = path.join(folder, file);
  mkdirSync(path.dirname(place), { recursive: true });
  writeFileSync(place, text);
}

function makeLesson() {
  const folder = makeTemporaryFolder();
  for (const file of ['plan.json', 'roster.csv', 'marks.jsonl', 'second-marks/skerry.jsonl'])
    put(folder, file);
  put(folder, 'clips/Teal squad/IMG_0412.MOV', 'a film');
  put(folder, 'clips/Teal squad/.thumb', 'a face');
  put(folder, 'evidence/stills/a-0-120.jpg');
  put(folder, 'evidence/proxies/a.v1.mp4');
  put(folder, 'evidence/a.look.json');
  put(folder, 'my notes.txt', 'the teacher’s own');
  return folder;
}

const listAll = (folder: string) => readdirSync(folder, { recursive: true }).map(String).sort();

describe('what a lesson holds', () => {
  test('has another code once anything has come since, but for the cache', async () => {
    const folder = makeLesson();
    const codeOf = async () => (await listHoldings(folder, 'films')).code;
    const shown = await codeOf();
    put(folder, 'evidence/b.look.json');
    expect(await codeOf()).toBe(shown);
    put(folder, 'clips/Teal squad/IMG_0413.MOV');
    expect(await codeOf()).not.toBe(shown);
  });

  test('is shown before: films are clips, stills, films for the window and caches, hidden ones included', async () => {
    const { files } = await listHoldings(makeLesson(), 'films');
    expect(files.map((file) => file.path)).toEqual([
      'clips/Teal squad/.thumb',
      'clips/Teal squad/IMG_0412.MOV',
      'evidence/a.look.json',
      'evidence/proxies/a.v1.mp4',
      'evidence/stills/a-0-120.jpg',
    ]);
  });

  test('is known by its name whatever the capitals, for some disks know none', async () => {
    const folder = makeLesson();
    renameSync(path.join(folder, 'clips'), path.join(folder, 'Clips'));
    const { files, leftAlone } = await listHoldings(folder, 'films');
    expect(files.map((file) => file.path)).toContain('Clips/Teal squad/IMG_0412.MOV');
    expect(leftAlone).toEqual(['my notes.txt']);
  });

  test('goes as listed, and marks and the teacher’s own files stay', async () => {
    const folder = makeLesson();
    const holdings = await listHoldings(folder, 'films');
    const deletion = await deleteHoldings(folder, { scope: 'films', holdings, stamp });
    expect(deletion).toMatchObject({ files: 5, problems: [] });
    expect(listAll(folder)).toEqual([
      'deletions.jsonl',
      'marks.jsonl',
      'my notes.txt',
      'plan.json',
      'roster.csv',
      'second-marks',
      'second-marks/skerry.jsonl',
    ]);
  });

  test('leaves, when all goes, only what is not Routemark’s and a log without names or content', async () => {
    const folder = makeLesson();
    const holdings = await listHoldings(folder, 'all');
    expect(holdings.leftAlone).toEqual(['my notes.txt']);
    await deleteHoldings(folder, { scope: 'all', holdings, stamp });
    expect(listAll(folder)).toEqual(['deletions.jsonl', 'my notes.txt']);
    const log = readFileSync(path.join(folder, 'deletions.jsonl'), 'utf8');
    expect(parseDeletionLog(log)).toEqual([{ ...stamp, what: 'all', files: 9, bytes: 19 }]);
    expect(log).not.toMatch(/Teal|IMG|clips/);
  });

  test('can be deleted again where one file would not go: what the lesson is opened by stays until all else went', async () => {
    const folder = makeLesson();
    put(folder, 'print/squad-sheets.pdf');
    const holdings = await listHoldings(folder, 'all');
    // A file that cannot be deleted by anybody: meanwhile it has become a folder with something in it.
    rmSync(path.join(folder, 'print/squad-sheets.pdf'));
    put(folder, 'print/squad-sheets.pdf/inner');
    const deletion = await deleteHoldings(folder, { scope: 'all', holdings, stamp });
    expect(deletion.problems).toMatchObject([{ path: 'print/squad-sheets.pdf' }]);
    expect(listAll(folder)).toEqual(expect.arrayContaining(['plan.json', 'roster.csv']));
    expect(listAll(folder)).not.toContain('marks.jsonl');
    const rest = await listHoldings(folder, 'all');
    const later = { ...stamp, at: '2025-08-01T09:05:00.000Z' };
    expect((await deleteHoldings(folder, { scope: 'all', holdings: rest, stamp: later })).problems).toEqual(
      [],
    );
    expect(listAll(folder)).toEqual(['deletions.jsonl', 'my notes.txt']);
  });

  test('is not deleted where that cannot be logged', async () => {
    const folder = makeLesson();
    const holdings = await listHoldings(folder, 'all');
    mkdirSync(path.join(folder, 'deletions.jsonl'));
    const deletion = await deleteHoldings(folder, { scope: 'all', holdings, stamp });
    expect(deletion).toMatchObject({
      files: 0,
      problems: [{ code: 'is-a-folder', path: 'deletions.jsonl' }],
    });
    expect(listAll(folder)).toEqual(expect.arrayContaining(holdings.files.map((file) => file.path)));
  });

  test('is logged beside a line that was cut off, and as begun before anything goes', async () => {
    const folder = makeLesson();
    put(folder, 'deletions.jsonl', '{"at":"2025-07');
    const holdings = await listHoldings(folder, 'films');
    await deleteHoldings(folder, { scope: 'films', holdings, stamp });
    const lines = readFileSync(path.join(folder, 'deletions.jsonl'), 'utf8').trim().split('\n');
    expect(lines[0]).toBe('{"at":"2025-07');
    const planned = { ...stamp, what: 'films', files: 5 };
    expect(lines.slice(1).map((line) => JSON.parse(line))).toMatchObject([
      { ...planned, isBegun: true },
      planned,
    ]);
    expect(parseDeletionLog(lines.slice(0, 2).join('\n'))).toMatchObject([{ files: 5, isBegun: true }]);
    expect(parseDeletionLog(lines.join('\n'))[0]).not.toHaveProperty('isBegun');
  });

  test('takes what was written from it along: sheets, records and paper have names on them', async () => {
    const folder = makeLesson();
    for (const file of ['hand-in/marks.csv', 'records/record k-1.md', 'print/squad-sheets.pdf'])
      put(folder, file);
    const paths = async (scope: 'films' | 'all') =>
      (await listHoldings(folder, scope)).files.map((file) => file.path);
    expect(await paths('all')).toEqual(
      expect.arrayContaining(['hand-in/marks.csv', 'records/record k-1.md', 'print/squad-sheets.pdf']),
    );
    expect(await paths('films')).not.toContain('hand-in/marks.csv');
  });

  test('is another list, with another code, once a file is added, changed or is asked for otherwise', async () => {
    const folder = makeLesson();
    const codes = [(await listHoldings(folder, 'films')).code];
    put(folder, 'clips/Teal squad/IMG_0413.MOV');
    codes.push((await listHoldings(folder, 'films')).code);
    utimesSync(path.join(folder, 'clips/Teal squad/IMG_0413.MOV'), 1, 1);
    codes.push((await listHoldings(folder, 'films')).code);
    codes.push((await listHoldings(folder, 'all')).code);
    expect(new Set(codes).size).toBe(4);
    expect((await listHoldings(folder, 'all')).code).toBe(codes[3]);
  });

  test('does not reach through links: what they lead to is left alone, and they are named', async () => {
    const folder = makeLesson();
    const elsewhere = makeTemporaryFolder();
    put(elsewhere, 'original.mov', 'the only copy');
    symlinkSync(elsewhere, path.join(folder, 'clips', 'tablet'));
    const holdings = await listHoldings(folder, 'films');
    expect(holdings.leftAlone).toContain('clips/tablet');
    await deleteHoldings(folder, { scope: 'films', holdings, stamp });
    expect(readFileSync(path.join(elsewhere, 'original.mov'), 'utf8')).toBe('the only copy');
  });

  test('that vanished meanwhile is told, and the rest goes', async () => {
    const folder = makeLesson();
    const holdings = await listHoldings(folder, 'films');
    await deleteHoldings(folder, { scope: 'films', holdings, stamp });
    const again = await deleteHoldings(folder, { scope: 'films', holdings, stamp });
    expect(again.files).toBe(0);
    expect(again.problems).toHaveLength(5);
  });
});

describe('the last day', () => {
  test('is kept to its end', () => {
    const keeping = parseKeeping(buildKeepingText('2025-07-31') ?? '');
    expect(keeping && [isOverdue(keeping, '2025-07-31'), isOverdue(keeping, '2025-08-01')]).toEqual([
      false,
      true,
    ]);
  });

  test('is a day of the calendar, or none', () => {
    expect([buildKeepingText('2025-02-30'), buildKeepingText('31.7.2025')]).toEqual([null, null]);
    expect([parseKeeping('{'), parseKeeping('{"format":"routemark-keeping","version":2}')]).toEqual([
      null,
      null,
    ]);
  });
});

test('the log of deletions is read back, and a line that was cut off does not hide the others', () => {
  const entry = { ...stamp, what: 'films', files: 3, bytes: 12 };
  const text = `${JSON.stringify(entry)}\n{"at":"2025-08\n${JSON.stringify({ ...entry, what: 'all' })}\n{`;
  expect(parseDeletionLog(text).map(({ what }) => what)).toEqual(['films', 'all']);
});
