import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { BUILT_IN_EXERCISES } from '../../src-core/lesson/library/built-in.ts';
import type { Plan } from '../../src-core/lesson/plan.ts';
import { follow, getWire } from './open-over.ts';
import { openTestDesk, WIRES } from './open-wires.ts';

/** The small lesson opened over a wire; its clips stay unread, for planning needs none. */
async function open(wire: string) {
  const { desk, parent, lessonFolder } = await openTestDesk();
  const client = await getWire(wire)(desk);
  const opened = await client.request('openLesson', { folder: desk.tokens.hand(lessonFolder).token });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const view = follow(null, opened.value.update);
  const readRoster = () => readFile(path.join(lessonFolder, 'roster.csv'), 'utf8');
  return { desk, parent, lessonFolder, client, view, lesson: view.lesson, readRoster };
}

const getCodes = (reply: { readonly problems: readonly { readonly code: string }[] }) =>
  reply.problems.map(({ code }) => code);

const change = (plan: Plan, edit: (copy: Plan) => void): Plan => {
  const copy = structuredClone(plan);
  edit(copy);
  return copy;
};

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('squads are suggested, saved, and stand in the roster', async () => {
    const { client, view, lesson, readRoster } = await open(wire);
    const plan = change(view.plan, ({ grouping }) => void grouping.together.push(['k-1', 'k-2']));
    const none = await client.request('suggestSquads', { lesson, plan, count: 3 });
    expect(getCodes(none)).toEqual(['squads-too-many']);
    const reply = await client.request('suggestSquads', { lesson, plan, count: 1 });
    if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
    expect(reply.value.squads).toMatchObject([{ code: 'teal', pupils: ['k-1', 'k-2'] }]);
    const assignment = [{ pupil: 'k-2', squad: 'teal' }];
    const saved = await client.request('saveSquads', { lesson, since: view.revision, assignment });
    if (!saved.ok) throw new Error(JSON.stringify(saved.problems));
    expect(follow(view, saved.value.update).pupils.map(({ squad }) => squad)).toEqual(['teal', 'teal']);
    expect(await readRoster()).toContain('k-2,Bo,Reed,teal');
  });

  test('the library is read, a teacher’s own is taken over and forgotten, a bad one refused whole', async () => {
    const { client } = await open(wire);
    const read = async () => {
      const reply = await client.request('readLibrary', {});
      return reply.ok ? reply.value.exercises : [];
    };
    expect(await read()).toHaveLength(BUILT_IN_EXERCISES.length);
    const own = { ...BUILT_IN_EXERCISES[0], code: 'gull-walk', name: 'Gull walk' };
    const library = { format: 'routemark-exercises', version: 1, exercises: [own] };
    await client.request('importLibrary', { text: JSON.stringify(library) });
    expect((await read()).find(({ code }) => code === 'gull-walk')).toEqual({ ...own, from: 'own' });
    const bad = JSON.stringify({ ...library, exercises: [{ ...own, name: 'x'.repeat(41) }] });
    expect(await client.request('importLibrary', { text: bad })).toMatchObject({
      ok: false,
      problems: [{ code: 'library-field', path: 'exercises[0].name', expected: 'at-most-characters' }],
    });
    expect(getCodes(await client.request('importLibrary', { text: '{' }))).toEqual(['library-not-json']);
    const two = JSON.stringify({ ...library, exercises: [own, own] });
    expect(getCodes(await client.request('importLibrary', { text: two }))).toEqual(['library-code-twice']);
    expect(await read()).toHaveLength(BUILT_IN_EXERCISES.length + 1);
    await client.request('importLibrary', { text: '' });
    expect(await read()).toHaveLength(BUILT_IN_EXERCISES.length);
  });

  test('a class list is previewed and merged, and not when the roster changed in between', async () => {
    const { client, desk, lesson, view, parent, lessonFolder, readRoster } = await open(wire);
    const list = path.join(parent, 'class.csv');
    await writeFile(list, 'Student ID,First name,Surname\nk-1,Ada,Marsh\nk-9,Wren,Holm\n');
    const order = {
      lesson,
      from: desk.tokens.hand(list).token,
      columns: null,
      classId: null,
      left: 'keep' as const,
    };
    const before = await readRoster();
    const preview = await client.request('previewRoster', order);
    if (!preview.ok) throw new Error(JSON.stringify(preview.problems));
    expect(preview.value.source).toMatchObject({ kind: 'csv', columns: { id: 'Student ID' } });
    expect(preview.value.merge).toMatchObject({
      added: [{ id: 'k-9', squad: 'amber' }],
      left: [{ id: 'k-2' }],
      unchanged: 1,
    });
    expect(await readRoster()).toBe(before);
    const draft = preview.value.draft ?? '';
    await writeFile(path.join(lessonFolder, 'roster.csv'), before.replace('Bo', 'Bob'));
    const refused = await client.request('mergeRoster', { ...order, since: null, draft });
    expect(getCodes(refused)).toEqual(['roster-changed']);
    await writeFile(path.join(lessonFolder, 'roster.csv'), before);
    const merged = await client.request('mergeRoster', { ...order, since: view.revision, draft });
    if (!merged.ok) throw new Error(JSON.stringify(merged.problems));
    expect(merged.value.merge).toEqual(preview.value.merge);
    expect(await readRoster()).toContain('k-2,Bo,Reed,amber,yes');
    expect((await readRoster()).split('\n')[0]).toBe('id,given,family,squad,left');
  });

  test('a OneRoster zip gives its classes to choose from', async () => {
    const { client, desk, lesson, parent } = await open(wire);
    const files = {
      'manifest.csv': 'propertyName,value\noneroster.version,1.1\n',
      'classes.csv': 'sourcedId,title\nc-1,9 Kelp\nc-2,8 Dulse\n',
      'enrollments.csv': 'sourcedId,classSourcedId,userSourcedId,role\ne,c-1,k-1,student\n',
      'users.csv': 'sourcedId,givenName,familyName\nk-1,Ada,Marsh\n',
    };
    const zip = path.join(parent, 'export.zip');
    const packed = Object.entries(files).map(([name, text]) => [name, strToU8(`\uFEFF${text}`)]);
    await writeFile(zip, zipSync(Object.fromEntries(packed)));
    const folder = path.join(parent, 'export');
    await mkdir(folder);
    for (const [name, text] of Object.entries(files)) await writeFile(path.join(folder, name), text);
    for (const place of [zip, folder]) {
      const order = { lesson, from: desk.tokens.hand(place).token, columns: null, left: 'keep' as const };
      const preview = await client.request('previewRoster', { ...order, classId: null });
      expect(preview).toMatchObject({
        ok: true,
        value: {
          merge: null,
          source: {
            kind: 'oneroster',
            version: '1.1',
            classId: null,
            classes: [
              { id: 'c-2', title: '8 Dulse', pupils: 0 },
              { id: 'c-1', title: '9 Kelp', pupils: 1 },
            ],
          },
        },
      });
      expect(getCodes(preview)).toEqual(['import-class-open']);
      const chosen = await client.request('previewRoster', { ...order, classId: 'c-1' });
      expect(chosen).toMatchObject({ ok: true, value: { merge: { left: [{ id: 'k-2' }], unchanged: 1 } } });
    }
  });

  test('a roster whose letters were lost is not written over', async () => {
    const { client, desk, lesson, parent, lessonFolder } = await open(wire);
    const latin = Buffer.from('id,given,family,squad\nk-1,Zo\xE9,Marsh,teal\n', 'latin1');
    await writeFile(path.join(lessonFolder, 'roster.csv'), latin);
    const list = path.join(parent, 'class.csv');
    await writeFile(list, 'id,given,family\nk-1,Zoé,Marsh\n');
    const from = desk.tokens.hand(list).token;
    const order = { lesson, from, columns: null, classId: null, left: 'keep' as const };
    const preview = await client.request('previewRoster', order);
    expect(preview).toMatchObject({ ok: true, value: { merge: null, draft: null } });
    expect(preview.problems).toEqual([{ code: 'roster-not-utf8', line: 2 }]);
    const saved = await client.request('saveSquads', { lesson, since: null, assignment: [] });
    expect(getCodes(saved)).toEqual(['roster-not-utf8']);
    expect(await readFile(path.join(lessonFolder, 'roster.csv'))).toEqual(latin);
  });

  test('what is no class list is refused with its name', async () => {
    const { client, desk, lesson, parent } = await open(wire);
    const list = path.join(parent, 'class.pdf');
    await writeFile(list, '%PDF-1.4');
    const from = desk.tokens.hand(list).token;
    const order = { lesson, columns: null, classId: null, left: 'keep' as const };
    const preview = await client.request('previewRoster', { ...order, from });
    expect(preview.problems).toEqual([{ code: 'import-unreadable', name: 'class.pdf' }]);
    const unknown = await client.request('previewRoster', { ...order, from: `f-${'0'.repeat(32)}` });
    expect(getCodes(unknown)).toEqual(['folder-unknown']);
  });

  test('a lesson is made, with a plan that has nothing to mend; never over a folder that is there', async () => {
    const { client, desk, parent, view } = await open(wire);
    const into = desk.tokens.hand(parent).token;
    const { lesson, zone, periods } = view.plan;
    const order = { into, folderName: 'spring circuit', lesson, zone, periods };
    const made = await client.request('newLesson', order);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { plan, lesson: id } = follow(null, made.value.update);
    expect(plan.lesson).toEqual(lesson);
    expect(await client.request('checkPlan', { plan })).toMatchObject({ value: { problems: [] } });
    const [station] = plan.stations;
    const pictured = {
      ...plan,
      stations: [{ ...station, photo: 'photos/lost.jpg' }, ...plan.stations.slice(1)],
    };
    const checked = await client.request('checkPlan', { lesson: id, plan: pictured });
    const lost = { code: 'print-photo-missing', station: station?.code, path: 'photos/lost.jpg' };
    expect(checked).toMatchObject({ value: { problems: [lost] } });
    expect(await client.request('checkPlan', { plan: pictured })).toMatchObject({ value: { problems: [] } });
    expect((await readdir(path.join(parent, 'spring circuit'))).toSorted()).toEqual([
      'clips',
      'plan.json',
      'roster.csv',
    ]);
    expect(getCodes(await client.request('newLesson', order))).toEqual(['lesson-folder-exists']);
    for (const folderName of ['../else', 'a/b', '..', 'a:b']) {
      expect(getCodes(await client.request('newLesson', { ...order, folderName }))).toEqual([
        'file-name-bad',
      ]);
    }
  });

  test('a lesson is copied for another day: its plan and pupils, no clips, nobody absent', async () => {
    const { client, desk, parent, lesson, lessonFolder } = await open(wire);
    await writeFile(
      path.join(lessonFolder, 'roster.csv'),
      'id,given,family,squad,attendance,stills\nk-1,Ada,Marsh,teal,absent,no\n',
    );
    await mkdir(path.join(lessonFolder, 'photos'));
    await writeFile(path.join(lessonFolder, 'photos', 'a.jpg'), 'a');
    const into = desk.tokens.hand(parent).token;
    const order = { lesson, into, folderName: 'next term', date: '2025-09-15', code: null };
    const copied = await client.request('copyLesson', order);
    if (!copied.ok) throw new Error(JSON.stringify(copied.problems));
    const view = follow(null, copied.value.update);
    expect(view.plan.lesson).toMatchObject({ code: 'SMALL', revision: 2, date: '2025-09-15' });
    expect(view.pupils).toMatchObject([{ id: 'k-1', attendance: 'present', stills: false }]);
    expect(await readdir(path.join(parent, 'next term', 'clips'))).toEqual([]);
    expect(await readdir(path.join(parent, 'next term', 'photos'))).toEqual(['a.jpg']);
  });

  test('what a plan said before it was saved over is kept, shown and compared', async () => {
    const { client, view, lesson } = await open(wire);
    const none = await client.request('listVersions', { lesson });
    expect(none).toMatchObject({ ok: true, value: { versions: [] } });
    const edited = change(view.plan, ({ stations }) => void Object.assign(stations[0] ?? {}, { reps: 7 }));
    const save = { lesson, since: null, base: view.planVersion, plan: edited };
    expect((await client.request('savePlan', save)).ok).toBe(true);
    const listed = await client.request('listVersions', { lesson });
    const [kept] = listed.ok ? listed.value.versions : [];
    const version = kept?.version ?? '';
    const read = await client.request('readVersion', { lesson, version });
    expect(read).toMatchObject({ ok: true, value: { plan: view.plan } });
    expect(await client.request('comparePlans', { lesson, from: version, to: null })).toMatchObject({
      ok: true,
      value: {
        changes: [{ part: 'stations', code: 'A', kind: 'changed', field: 'reps', was: 5, now: 7 }],
      },
    });
    const unknown = '2020-01-01T00-00-00-000Z';
    expect(getCodes(await client.request('readVersion', { lesson, version: unknown }))).toEqual([
      'version-unknown',
    ]);
    const path = { lesson, version: '../../plan' };
    expect(getCodes(await client.request('readVersion', path))).toEqual(['call-malformed']);
  });
});

test('a class list may be uploaded, and is thrown away once it was merged', async () => {
  const { client, desk, lesson, view, lessonFolder } = await open('in process');
  const text = 'id,given,family\nk-1,Ada,Marsh\nk-2,Bo,Reed\n';
  const files = [{ path: 'class.csv', sizeBytes: text.length, modifiedMs: null }];
  const opened = await client.request('openInbox', { lesson, files });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const inbox = desk.inboxes.find(opened.value.inbox);
  const [announced] = inbox?.files ?? [];
  if (!inbox || !announced) throw new Error('no inbox');
  await desk.inboxes.receive(inbox, announced, new Blob([text]).stream());
  const order = { lesson, from: opened.value.inbox, columns: null, classId: null, left: 'remove' as const };
  const preview = await client.request('previewRoster', order);
  if (!preview.ok) throw new Error(JSON.stringify(preview.problems));
  expect(preview.value.merge).toMatchObject({ added: [], left: [], unchanged: 2 });
  const draft = preview.value.draft ?? '';
  expect((await client.request('mergeRoster', { ...order, since: view.revision, draft })).ok).toBe(true);
  expect(
    (await readdir(path.join(lessonFolder, 'clips'))).filter((name) => name.startsWith('.inbox')),
  ).toEqual([]);
});
