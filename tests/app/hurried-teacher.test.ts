import { copyFile, mkdir, readdir, readFile, rename, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { useDemoCopies } from './demo-copies.ts';
import { type GradedFolder, gradeFolder } from './grade-folder.ts';
import { linkFolder } from './link-folder.ts';

const demo = useDemoCopies();

const countClips = ({ graded }: GradedFolder, squad: string) =>
  graded.squads.find((one) => one.squad.code === squad)?.clips.length;

const listFlags = ({ graded }: GradedFolder) =>
  graded.flags.map(({ flag }) => `${flag.code} ${flag.squad}`).sort();

const listCodes = ({ problems }: GradedFolder) => [...new Set(problems.map(({ code }) => code))].sort();

/** Each folder of clips of a lesson, and what lies in it. */
async function listFolders(lesson: string) {
  const clips = path.join(lesson, 'clips');
  return Promise.all(
    (await readdir(clips)).map(async (name) => {
      const folder = path.join(clips, name);
      return { folder, files: (await readdir(folder)).filter((file) => /\.(mov|mp4|mkv|jpg)$/i.test(file)) };
    }),
  );
}

/** The plan with something in it written otherwise. */
async function editPlan(lesson: string, from: string | RegExp, to: string): Promise<void> {
  const file = path.join(lesson, 'plan.json');
  const text = await readFile(file, 'utf8');
  expect(text).toMatch(from);
  await writeFile(file, text.replace(from, to));
}

describe('folders that are not what they should be', () => {
  test('the same clips in the folder of a whole tablet are found all the same', async () => {
    const lesson = await demo.copy();
    const before = await gradeFolder(lesson);
    const deep = path.join(lesson, 'clips', 'Tablet 3', 'DCIM', '100APPLE');
    await rename(path.join(lesson, 'clips', 'Tablet 3'), path.join(lesson, 'moved'));
    await mkdir(path.dirname(deep), { recursive: true });
    await rename(path.join(lesson, 'moved'), deep);
    const after = await gradeFolder(lesson);
    expect(listFlags(after)).toEqual(listFlags(before));
    expect(countClips(after, 'plum')).toBe(countClips(before, 'plum'));
  });

  test('one squad’s folder named as the folder of clips is that squad’s alone', async () => {
    const lesson = await demo.copy();
    const found = await gradeFolder(lesson, path.join(lesson, 'clips', 'amber'));
    expect(countClips(found, 'amber')).toBe(5);
    expect(listCodes(found)).toContain('squad-without-clips');
    expect(found.advice.map(({ what }) => what)).toContain('Teal has no clip in this lesson.');
  });

  test('a folder of something else leaves every file waiting, named, and every squad without a clip', async () => {
    const lesson = await demo.copy();
    await rename(path.join(lesson, 'clips', 'Teal squad'), path.join(lesson, 'Holiday 2019'));
    const found = await gradeFolder(lesson, path.join(lesson, 'Holiday 2019'));
    expect(listCodes(found)).toEqual(['clip-of-nobody', 'squad-without-clips']);
    expect(found.graded.squads.every(({ clips }) => clips.length === 0)).toBe(true);
    expect(found.advice.every(({ todo }) => todo !== null)).toBe(true);
  });

  test('no folder of clips, an empty one and a file in its place are each named', async () => {
    const lesson = await demo.copy();
    const clips = path.join(lesson, 'clips');
    await rm(clips, { recursive: true });
    expect(listCodes(await gradeFolder(lesson))).toEqual(['clips-folder-missing', 'squad-without-clips']);
    await mkdir(clips);
    expect(listCodes(await gradeFolder(lesson))).toEqual(['squad-without-clips']);
    await rm(clips, { recursive: true });
    await writeFile(clips, 'notes');
    expect(listCodes(await gradeFolder(lesson))).toEqual(['folder-unreadable', 'squad-without-clips']);
  });

  test('the same tablet copied twice counts once', async () => {
    const lesson = await demo.copy();
    const before = await gradeFolder(lesson);
    const clips = path.join(lesson, 'clips');
    await linkFolder(path.join(clips, 'Teal squad'), path.join(clips, 'Teal squad (2)'));
    const after = await gradeFolder(lesson);
    expect(listFlags(after)).toEqual(listFlags(before));
    expect(countClips(after, 'teal')).toBe(countClips(before, 'teal'));
    expect(listCodes(after)).toContain('same-clip-twice');
  });

  test('two squads’ folders swapped lose no clip and settle nothing by themselves', async () => {
    const lesson = await demo.copy();
    const clips = path.join(lesson, 'clips');
    await rename(path.join(clips, 'MOSS'), path.join(clips, 'swap'));
    await rename(path.join(clips, 'Teal squad'), path.join(clips, 'MOSS'));
    await rename(path.join(clips, 'swap'), path.join(clips, 'Teal squad'));
    const found = await gradeFolder(lesson);
    expect(listFlags(found).filter((flag) => flag.startsWith('out-of-order'))).not.toEqual([]);
    expect(found.graded.score.pupils.every(({ state }) => state !== 'confirmed')).toBe(true);
  });

  test('a squad without a folder is named, and its slots are missing', async () => {
    const lesson = await demo.copy();
    await rm(path.join(lesson, 'clips', 'amber'), { recursive: true });
    const found = await gradeFolder(lesson);
    expect(found.problems).toContainEqual({ code: 'squad-without-clips', squad: 'amber' });
    expect(listFlags(found).filter((flag) => flag === 'missing amber')).toHaveLength(6);
  });
});

describe('clips that are not what they should be', () => {
  test('yesterday’s clips alone are set aside with their date, though they show the same cards', async () => {
    const lesson = await demo.copy();
    await editPlan(lesson, '"date": "2025-05-15"', '"date": "2025-05-16"');
    const found = await gradeFolder(lesson);
    expect(found.graded.squads.map(({ clips }) => clips.length)).toEqual([0, 0, 0, 0]);
    expect(listCodes(found)).toContain('squad-without-clips');
    expect(found.json).toContain('Filmed at 2025-05-15 10:47:08, in no period of this day.');
  });

  test('names and file dates stripped by a messenger change no order that the containers still tell', async () => {
    const lesson = await demo.copy();
    const before = await gradeFolder(lesson);
    let number = 1;
    for (const { folder, files } of await listFolders(lesson)) {
      for (const file of files) {
        const to = path.join(folder, `received_${number}${path.extname(file)}`);
        await copyFile(path.join(folder, file), to);
        await rm(path.join(folder, file));
        await utimes(to, new Date('2025-05-20T08:00:00Z'), new Date('2025-05-20T08:00:00Z'));
        number += 1;
      }
    }
    const after = await gradeFolder(lesson);
    const teal = ({ graded }: GradedFolder) => graded.squads[0]?.clips.map(({ reading }) => reading.id);
    expect(teal(after)).toEqual(teal(before));
  });

  test('cards of an older print are ignored and named; nothing is placed by them', async () => {
    const lesson = await demo.copy();
    await editPlan(lesson, '"revision": 2', '"revision": 3');
    const found = await gradeFolder(lesson);
    const old = found.problems.filter((one) => one.code === 'card-foreign' && one.kind === 'other-revision');
    expect(old.length).toBeGreaterThan(15);
    const clips = found.graded.squads.flatMap((squad) => squad.clips);
    expect(clips.every(({ assignment }) => assignment.stationFrom !== 'card')).toBe(true);
  });

  test('odd names are read, shown on one line, and found again', async () => {
    const lesson = await demo.copy();
    const teal = path.join(lesson, 'clips', 'Teal squad');
    const folder = path.join(lesson, 'clips', 'teal 🎬 "A" 100% #1');
    await rename(teal, folder);
    const long = `${'é'.repeat(125)}.MOV`;
    const odd = [
      '-dash.MOV',
      'two\nlines.MOV',
      long,
      '%d%s\'".MOV',
      '#?&=.MOV',
      '\u001b[31mred.MOV',
      'back\\slash.MOV',
    ];
    const plain = ['0412', '0413', '0414', '0415', '0416', '0417', '0418'].map((one) => `IMG_${one}.MOV`);
    for (const [at, name] of odd.entries()) {
      await rename(path.join(folder, plain[at] ?? ''), path.join(folder, name));
    }
    const known = await gradeFolder(lesson);
    for (const { path: file, reading } of known.graded.squads[0]?.clips ?? []) {
      if (odd.includes(path.posix.basename(file)))
        await rm(path.join(lesson, 'evidence', `${reading.id}.cards.json`));
    }
    const found = await gradeFolder(lesson);
    expect(found.graded.squads[0]?.clips.map(({ assignment }) => assignment.stationFrom)).toEqual([
      'card',
      'card',
      'card',
      'card',
      'inferred',
      'card',
      'card',
    ]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
    expect(found.text).not.toMatch(/\u001b/);
    expect(found.text).not.toContain('\nlines');
    expect(found.text).toContain('two\uFFFDlines.MOV');
  });

  test('links are named and not followed', async () => {
    const lesson = await demo.copy();
    const clips = path.join(lesson, 'clips');
    await symlink(path.join(clips, 'amber'), path.join(clips, 'Plum'));
    await symlink('/etc/passwd', path.join(clips, 'amber', 'x.MOV'));
    const found = await gradeFolder(lesson);
    expect(found.problems.filter(({ code }) => code === 'link-not-followed')).toHaveLength(2);
  });
});

describe('what was read before', () => {
  test('evidence that is deleted or spoilt is read anew, to the same result', async () => {
    const lesson = await demo.copy();
    const before = await gradeFolder(lesson);
    const evidence = path.join(lesson, 'evidence');
    const entries = await readdir(evidence);
    await rm(path.join(evidence, entries[0] ?? ''));
    for (const [at, text] of ['', '{"analyser":1', '{"analyser":99,"readings":[],"problems":[]}'].entries()) {
      const file = path.join(evidence, entries[at + 1] ?? '');
      await rm(file);
      await writeFile(file, text);
    }
    expect((await gradeFolder(lesson)).json).toBe(before.json);
    expect(await readdir(evidence)).toEqual(entries);
  });

  test('a file where the evidence should be costs time, not results', async () => {
    const lesson = await demo.copy({ evidence: false });
    // Moss's clip in Teal's folder is told by its pinnies even where nothing else of Moss is there.
    await rm(path.join(lesson, 'clips', 'MOSS'), { recursive: true });
    await rm(path.join(lesson, 'clips', 'amber'), { recursive: true });
    await rm(path.join(lesson, 'clips', 'Tablet 3'), { recursive: true });
    await writeFile(path.join(lesson, 'evidence'), 'notes');
    expect(countClips(await gradeFolder(lesson), 'teal')).toBe(7);
  });

  test('no clip of the lesson was written into by any of this', async () => {
    const base = demo.getBase();
    const again = await gradeFolder(base);
    const ids = [...again.graded.squads.flatMap(({ clips }) => clips), ...again.graded.aside];
    const known = new Set((await readdir(path.join(base, 'evidence'))).map((name) => name.split('.')[0]));
    const unread = ids.filter(({ reading }) => reading.card !== null && !known.has(reading.id));
    expect(unread).toEqual([]);
  });
});
