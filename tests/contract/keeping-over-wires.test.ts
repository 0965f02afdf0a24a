import { cp, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseDeletionLog } from '../../src-core/lesson-file/deletion-log.ts';
import { follow, type Open, openOver, who } from './open-over.ts';
import { WIRES } from './open-wires.ts';

async function list({ client, view }: Open, scope: 'films' | 'all') {
  const reply = await client.request('readHoldings', { lesson: view.lesson, scope });
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  return reply.value.holdings;
}

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a last day is set, told as over once it is, and taken back; nothing goes by itself', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const { lesson } = view;
    const set = (until: string | null) => client.request('keepUntil', { lesson, until });
    expect(await set('2025-06-30')).toMatchObject({
      ok: true,
      value: { keeping: { until: '2025-06-30', isOverdue: true, others: [], deletions: [] } },
    });
    expect(await set('2999-06-30')).toMatchObject({ value: { keeping: { isOverdue: false } } });
    expect(await set(null)).toMatchObject({ value: { keeping: { until: null } } });
    expect(await client.request('keepUntil', { lesson, until: '30 June' })).toMatchObject({
      ok: false,
      problems: [{ code: 'call-malformed', path: 'until' }],
    });
    await writeFile(path.join(desk.lessonFolder, 'keeping.json'), '{');
    const read = await client.request('readKeeping', { lesson });
    expect(read).toMatchObject({ value: { keeping: { until: null, isUnreadable: true } } });
    expect((await readdir(path.join(desk.lessonFolder, 'clips'))).length).toBe(2);
  });

  test('films go only as listed, the lesson shows that they are gone, and the log has no content', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const seen = await list(open, 'films');
    expect(seen.files.map((file) => file.path.split('/')[0])).toContain('evidence');
    const late = path.join(open.test.lessonFolder, 'clips', 'late.txt');
    await writeFile(late, 'not seen');
    const letGo = (code: string) =>
      open.client.request('deleteHoldings', { lesson, who, scope: 'films', code });
    expect(await letGo(seen.code)).toEqual({ ok: false, problems: [{ code: 'holdings-changed' }] });
    const again = await list(open, 'films');
    const gone = await letGo(again.code);
    expect(gone).toMatchObject({ ok: true, value: { files: again.files.length, isGone: false } });
    const now = await open.client.request('readLesson', { lesson, since: null });
    if (!now.ok) throw new Error(JSON.stringify(now.problems));
    open.view = follow(null, now.value.update);
    expect([open.view.clips.length, open.view.reading.state]).toEqual([0, 'unread']);
    const log = await readFile(path.join(open.test.lessonFolder, 'deletions.jsonl'), 'utf8');
    expect(parseDeletionLog(log)).toMatchObject([{ who, what: 'films', files: again.files.length }]);
    expect(log).not.toMatch(/IMG|teal/);
    const keeping = await open.client.request('readKeeping', { lesson });
    expect(keeping).toMatchObject({ value: { keeping: { deletions: [{ who, what: 'films' }] } } });
  });

  test('where all goes, the lesson is closed and no longer known, and the teacher’s own files stay', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    await writeFile(path.join(open.test.lessonFolder, 'my notes.txt'), 'mine');
    const { code, leftAlone } = await list(open, 'all');
    expect(leftAlone).toEqual(['my notes.txt']);
    const order = { lesson, who, scope: 'all', code } as const;
    expect(await open.client.request('deleteHoldings', order)).toMatchObject({
      ok: true,
      value: { isGone: true },
    });
    expect((await readdir(open.test.lessonFolder)).sort()).toEqual(['deletions.jsonl', 'my notes.txt']);
    const desk = await open.client.request('readDesk', {});
    expect(desk).toMatchObject({ ok: true, value: { lessons: [] } });
    expect(await open.client.request('readLesson', { lesson, since: null })).toEqual({
      ok: false,
      problems: [{ code: 'lesson-unknown' }],
    });
  });

  test('where it could not be done, the lesson stays open and says why', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const { code } = await list(open, 'all');
    await mkdir(path.join(open.test.lessonFolder, 'deletions.jsonl'));
    const order = { lesson, who, scope: 'all', code } as const;
    expect(await open.client.request('deleteHoldings', order)).toMatchObject({
      ok: true,
      value: { files: 0, isGone: false },
      problems: [{ code: 'is-a-folder' }],
    });
    expect(await open.client.request('readLesson', { lesson, since: null })).toMatchObject({ ok: true });
  });

  test('a tablet is compared by content, and what the lesson lacks must stay there', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const tablet = path.join(desk.parent, 'tablet');
    await mkdir(tablet);
    await cp(path.join(desk.lessonFolder, 'clips', 'teal', 'IMG_1000.MP4'), path.join(tablet, 'other.mp4'));
    await writeFile(path.join(tablet, 'only here.mp4'), 'a film');
    const { token: folder } = desk.desk.tokens.hand(tablet);
    const reply = await client.request('compareTablet', { lesson: view.lesson, folder });
    if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
    const { safe, missing } = reply.value.tablet;
    expect([safe, missing].map((files) => files.map(({ name }) => name))).toEqual([
      ['other.mp4'],
      ['only here.mp4'],
    ]);
    const guess = await client.request('compareTablet', {
      lesson: view.lesson,
      folder: `f-${'0'.repeat(32)}`,
    });
    expect(guess).toEqual({ ok: false, problems: [{ code: 'folder-unknown' }] });
  });

  test('consent is noted without a reason, shows at once, and withheld it shows nobody', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const note = async (words: object) => {
      const order = { lesson, since: open.view.revision, pupil: 'k-1', ...words };
      const reply = await open.client.request('noteConsent', order);
      if (reply.ok) open.view = follow(open.view, reply.value.update);
      return reply;
    };
    await note({ consent: 'withheld' });
    expect(open.view.pupils[0]).toMatchObject({ id: 'k-1', consent: 'withheld', stills: false });
    await note({ consent: 'given' });
    expect(open.view.pupils[0]).toMatchObject({ consent: 'given', stills: true });
    await note({ stills: false });
    expect(open.view.pupils[0]).toMatchObject({ consent: 'given', stills: false });
    expect(open.view.pupils[1]).not.toHaveProperty('consent');
    const roster = await readFile(path.join(open.test.lessonFolder, 'roster.csv'), 'utf8');
    expect(roster).toBe(
      'id,given,family,squad,consent,stills\nk-1,Ada,Marsh,teal,yes,no\nk-2,Bo,Reed,amber,,\n',
    );
    expect(await note({ reason: 'asthma' })).toMatchObject({
      ok: false,
      problems: [{ code: 'call-malformed' }],
    });
  });

  test('a pupil’s record names nobody else, and is written as read', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const order = { lesson: view.lesson, pupil: 'k-1' };
    const read = await client.request('readPupilRecord', order);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { text, draft, fileName, keptIn } = read.value;
    expect(text).toContain('# What is held on Ada Marsh (k-1)');
    expect(text).not.toMatch(/\bBo\b|Reed|k-2/);
    expect(keptIn).toContain('clips/teal/IMG_1000.MP4');
    const place = { draft, fileName, into: null, replace: false };
    const written = await client.request('writePupilRecord', { ...order, ...place });
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    expect(written.value.path).toBe(path.join(desk.lessonFolder, 'records', 'record k-1.md'));
    expect(await readFile(written.value.path, 'utf8')).toBe(text);
    const unknown = await client.request('readPupilRecord', { ...order, pupil: 'k-9' });
    expect(unknown).toEqual({ ok: false, problems: [{ code: 'pupil-unknown', pupil: 'k-9' }] });
  });
});
