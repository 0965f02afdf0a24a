import { readdir, readFile, symlink, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { type Open, openOver } from './open-over.ts';
import { WIRES } from './open-wires.ts';

/** The lesson kept in a folder of this name beside it. */
async function keepBeside({ client, view, test: { desk, parent } }: Open) {
  const { token: folder } = desk.tokens.hand(parent);
  const keep = () => client.request('keepLesson', { lesson: view.lesson, into: folder, withClips: false });
  const restore = (name: string, onlyWhole = false) =>
    client.request('restoreLesson', { folder, name, onlyWhole });
  return { folder, keep, restore, list: () => client.request('listArchives', { folder }) };
}

/** Another file's bytes in the place of one that the archive holds. */
async function spoil(file: string, name: string): Promise<void> {
  const files = unzipSync(await readFile(file));
  await writeFile(file, zipSync({ ...files, [name]: new TextEncoder().encode('not what was put in') }));
}

const NAME = '2025-05-15 Small circuit 7 Brine';

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a lesson is kept twice a day under two names, and restored beside what is there', async () => {
    const open = await openOver(wire);
    const { parent, lessonFolder } = open.test;
    const { keep, list, restore } = await keepBeside(open);
    await symlink('/etc/hostname', path.join(lessonFolder, 'elsewhere'));
    for (const name of [`${NAME}.zip`, `${NAME} 2.zip`])
      expect(await keep()).toMatchObject({
        ok: true,
        value: { path: path.join(parent, name) },
        problems: [{ code: 'archive-left-out', path: 'elsewhere' }],
      });
    const lesson = { title: 'Small circuit', className: '7 Brine', date: '2025-05-15', holdsClips: false };
    expect(await list()).toMatchObject({
      value: {
        archives: [
          { name: `${NAME} 2.zip`, ...lesson },
          { name: `${NAME}.zip`, ...lesson },
        ],
        bad: [],
      },
    });
    expect(await restore(`${NAME}.zip`)).toMatchObject({ ok: true, problems: [] });
    expect(await restore(`${NAME}.zip`)).toMatchObject({ ok: true, problems: [] });
    const roster = (folder: string) => readFile(path.join(parent, folder, 'roster.csv'), 'utf8');
    expect(await roster(NAME)).toBe(await roster('lesson'));
    expect(await roster(`${NAME} 2`)).toBe(await roster('lesson'));
  });

  test('what cannot be restored from is listed with its reason, and what is whole can be asked for', async () => {
    const open = await openOver(wire);
    const { parent, desk } = open.test;
    const { keep, list, restore } = await keepBeside(open);
    await keep();
    await keep();
    await spoil(path.join(parent, `${NAME}.zip`), 'roster.csv');
    await truncate(path.join(parent, `${NAME} 2.zip`), 400);
    await writeFile(path.join(parent, 'other.zip'), zipSync({ 'a.txt': new Uint8Array(3) }));
    expect(await list()).toMatchObject({
      value: {
        archives: [{ name: `${NAME}.zip` }],
        bad: [{ name: `${NAME} 2.zip`, problem: { code: 'archive-cut-short' } }],
      },
    });
    const damage = { code: 'archive-damaged', files: ['roster.csv'] };
    expect(await restore(`${NAME}.zip`)).toMatchObject({ ok: false, problems: [damage] });
    const part = await restore(`${NAME}.zip`, true);
    expect(part).toMatchObject({ ok: true, problems: [damage] });
    expect(await readdir(path.join(parent, NAME))).not.toContain('roster.csv');
    const gone = desk.tokens.hand(path.join(parent, 'no such folder'));
    expect(await open.client.request('listArchives', { folder: gone.token })).toMatchObject({
      ok: false,
      problems: [{ code: 'folder-unreadable' }],
    });
  });
});

test('what leads out of the folder is no archive’s name', async () => {
  const open = await openOver('in process');
  const { restore } = await keepBeside(open);
  const before = await readdir(open.test.parent);
  for (const name of ['..zip', '...zip', ' .zip', 'a/b.zip', 'a:b.zip']) {
    const [problem] = (await restore(name)).problems;
    expect([name, problem?.code]).toEqual([name, expect.stringMatching(/^(file-name-bad|call-malformed)$/)]);
  }
  expect(await readdir(open.test.parent)).toEqual(before);
});
