import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../src-core/contract/calls.ts';
import { buildSchoolSet, toBundle } from '../unit/gradebook/oneroster/school.ts';
import { type Open, openOver, who } from './open-over.ts';
import { WIRES } from './open-wires.ts';

type What = CallInput<'draftHandIn'>['what'];

/** A school's set that the small lesson's two pupils are in, as a folder beside the lesson. */
async function writeSchoolSet(parent: string): Promise<string> {
  const folder = path.join(parent, 'school');
  await mkdir(folder);
  for (const { path: file, text } of toBundle(buildSchoolSet('1.2')).files) {
    await writeFile(path.join(folder, file), text.replaceAll('k-0412', 'k-1').replaceAll('k-0414', 'k-2'));
  }
  return folder;
}

async function draft({ client, view }: Open, what: What) {
  const reply = await client.request('draftHandIn', { lesson: view.lesson, what, evenWithOpenFlags: true });
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  return reply.value;
}

function write(
  { client, view }: Open,
  order: { what: What; draft: string; fileName: string; into?: string },
) {
  const rest = { since: null, who, into: null, replace: false, evenWithOpenFlags: true };
  return client.request('writeHandIn', { lesson: view.lesson, ...rest, ...order });
}

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a workbook is drafted with both its sheets, and written as one that a spreadsheet opens', async () => {
    const open = await openOver(wire);
    const what: What = { kind: 'xlsx', columns: null };
    const { preview, draft: seen, fileName } = await draft(open, what);
    if (preview?.kind !== 'xlsx' || seen === null) throw new Error('no workbook');
    // Three slots and one criterion of the squad for each of the two pupils.
    expect([preview.sheet.rows.length, preview.account.rows.length]).toEqual([2, 8]);
    expect(await write(open, { what, draft: seen, fileName: 'marks.csv' })).toEqual({
      ok: false,
      problems: [{ code: 'file-name-bad', path: 'marks.csv' }],
    });
    const written = await write(open, { what, draft: seen, fileName });
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    const parts = unzipSync(await readFile(written.value.path));
    const shared = strFromU8(parts['xl/sharedStrings.xml'] ?? new Uint8Array());
    expect(shared).toContain('k-1');
    expect(shared).toContain('A Post A');
  });

  test('a OneRoster set asks for the school’s own, is shown with every rule, and is written as shown', async () => {
    const open = await openOver(wire);
    const order = { kind: 'oneroster', version: '1.2', school: null, classId: null, category: null } as const;
    const without = await draft(open, order);
    expect(without.draft).toBeNull();
    expect(without.problems).toEqual([{ code: 'bundle-school-missing' }]);
    const school = open.test.desk.tokens.hand(await writeSchoolSet(open.test.parent)).token;
    const what: What = { ...order, school };
    const { preview, draft: seen, fileName } = await draft(open, what);
    if (preview?.kind !== 'oneroster' || seen === null) throw new Error('no set');
    expect(preview.school).toMatchObject({ version: '1.2', classId: 'class-kelp', faultCount: 0 });
    expect(preview.rules?.length).toBeGreaterThan(30);
    expect(preview.rules?.filter(({ faults }) => faults.length > 0)).toEqual([]);
    expect(preview.files?.find(({ name }) => name === 'results.csv')).toMatchObject({ rows: 2 });
    const written = await write(open, { what, draft: seen, fileName });
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    const archive = unzipSync(await readFile(written.value.path));
    const texts = Object.entries(archive).map(([name, bytes]) => [name, strFromU8(bytes)]);
    expect(Object.fromEntries(texts)).toEqual(
      Object.fromEntries((preview.files ?? []).map(({ name, text }) => [name, text])),
    );
    const memory = await open.client.request('readHandInMemory', {});
    expect(memory).toMatchObject({ ok: true, value: { schoolSet: { token: school }, lastFolder: null } });
    expect(await draft(open, { ...what, classId: 'class-weed' })).toMatchObject({
      draft: null,
      problems: [{ code: 'bundle-class-unknown' }],
    });
  });

  test('what was handed in elsewhere is remembered, and a kind that nobody knows is refused', async () => {
    const open = await openOver(wire);
    const chosen = path.join(open.test.parent, 'department');
    await mkdir(chosen);
    const { token: into } = open.test.desk.tokens.hand(chosen);
    const what: What = { kind: 'csv', columns: null };
    const { draft: seen, fileName } = await draft(open, what);
    expect(await write(open, { what, draft: seen ?? '', fileName, into })).toMatchObject({ ok: true });
    const memory = await open.client.request('readHandInMemory', {});
    expect(memory).toMatchObject({ ok: true, value: { lastFolder: { path: chosen } } });
    const odd = { lesson: open.view.lesson, what: { kind: 'telegram' }, evenWithOpenFlags: true };
    expect(await open.client.request('draftHandIn', odd as never)).toMatchObject({
      ok: false,
      problems: [{ code: 'call-malformed', path: 'what.kind' }],
    });
  });
});
