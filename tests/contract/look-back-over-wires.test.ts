import { mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { openOver } from './open-over.ts';
import { WIRES } from './open-wires.ts';

const CLASS = { school: 'Cobble Quay School', className: '7 Brine' };

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('figures are read as kept, added up where they are not, and stand when the films have gone', async () => {
    const { client, test: desk } = await openOver(wire);
    const read = () => client.request('readLookBack', { folder: null });
    expect(await read()).toMatchObject({ value: { summaries: [], stale: 1, filmsGone: [], problems: [] } });
    const added = await client.request('refreshLookBack', { folder: null });
    expect(added).toMatchObject({ value: { summaries: [{ lesson: CLASS, clips: 6 }], stale: 0 } });
    expect(await read()).toMatchObject({ value: { stale: 0, filmsGone: [] } });
    await rm(path.join(desk.lessonFolder, 'clips'), { recursive: true });
    await mkdir(path.join(desk.lessonFolder, 'clips'));
    expect(await read()).toMatchObject({ value: { summaries: [{ clips: 6 }], stale: 0, filmsGone: [0] } });
  });

  test('figures are written beside the lessons of the class, and over a file only when that is said', async () => {
    const { client, test: desk } = await openOver(wire);
    const write = (replace: boolean, className = CLASS.className) =>
      client.request('writeFigures', { folder: null, ...CLASS, className, replace });
    expect(await write(false)).toMatchObject({ ok: false, problems: [{ code: 'no-lessons-found' }] });
    await client.request('refreshLookBack', { folder: null });
    const file = path.join(desk.parent, 'look back 7-Brine.csv');
    expect(await write(false)).toEqual({ ok: true, value: { path: file }, problems: [] });
    expect((await readFile(file, 'utf8')).trimEnd().split('\r\n')).toHaveLength(1 + 2);
    expect(await write(false)).toMatchObject({ ok: false, problems: [{ code: 'file-exists', path: file }] });
    expect(await write(true)).toMatchObject({ ok: true });
    expect(await write(true, '8 Dulse')).toMatchObject({ ok: false });
  });
});
