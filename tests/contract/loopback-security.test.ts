import { readFile, stat } from 'node:fs/promises';
import { request as httpRequest } from 'node:http';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { PAGE, type Served, serveSmallLesson } from './serve-small-lesson.ts';

/** A request with nothing added or mended on its way, path and Host as given. */
function ask(
  port: number,
  options: {
    readonly path: string;
    readonly headers?: object;
    readonly method?: string;
    readonly body?: string;
  },
) {
  return new Promise<{ readonly status: number; readonly text: string }>((resolve, reject) => {
    const { body, ...rest } = options;
    const asked = httpRequest(
      { host: '127.0.0.1', port, ...rest, headers: { ...rest.headers } },
      (answer) => {
        let text = '';
        answer.setEncoding('latin1').on('data', (part) => {
          text += part;
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text }));
      },
    );
    asked.on('error', reject);
    asked.end(body);
  });
}

describe('the loopback server', () => {
  test('lets one browser in by its key, once, with a cookie that scripts and other sites never see', async () => {
    const { served } = await serveSmallLesson();
    const address = served.makeAddress();
    const first = await fetch(address, { redirect: 'manual' });
    expect(first.status).toBe(303);
    expect(first.headers.get('location')).toBe('/');
    expect(first.headers.get('set-cookie')).toMatch(
      /^routemark-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/,
    );
    expect((await fetch(address, { redirect: 'manual' })).status).toBe(401);
  });

  test('lets nobody in without a key or by one that it did not give', async () => {
    const { home } = await serveSmallLesson();
    for (const key of ['', '?key=', '?key=x', `?key=${'A'.repeat(32)}`, '?key=%00', '?KEY=x']) {
      const answer = await fetch(`${home}/open${key}`, { redirect: 'manual' });
      expect([answer.status, answer.headers.get('set-cookie')], key).toEqual([401, null]);
    }
  });

  test('gives its cookie a name of its own, so that two desks of one machine do not shut each other’s windows', async () => {
    const [one, other] = [await serveSmallLesson(), await serveSmallLesson()];
    const both = { cookie: `${one.headers.cookie}; ${other.headers.cookie}` };
    expect((await fetch(one.home, { headers: both })).status).toBe(200);
    expect((await fetch(other.home, { headers: both })).status).toBe(200);
  });

  test('gives the page with a policy of its own for each answer, and no other origin any right', async () => {
    const { home, headers } = await serveSmallLesson();
    const pages = await Promise.all([1, 2].map(() => fetch(home, { headers })));
    const policies = pages.map((page) => page.headers.get('content-security-policy') ?? '');
    expect(policies[0]).toMatch(/^default-src 'none'; /);
    expect(policies[0]).not.toBe(policies[1]);
    const nonce = /'nonce-([^']+)'/.exec(policies[0] ?? '')?.[1] ?? 'none';
    expect(await pages[0]?.text()).toContain(`nonce="${nonce}"`);
    expect(pages[0]?.headers.get('access-control-allow-origin')).toBeNull();
    expect(pages[0]?.headers.get('x-content-type-options')).toBe('nosniff');
  });

  test('answers nobody without the cookie, from elsewhere, or under another name', async () => {
    const { served, home, headers } = await serveSmallLesson();
    const call = { method: 'POST', body: '{}' };
    const page = { 'x-routemark-page': PAGE };
    expect((await fetch(home)).status).toBe(401);
    expect((await fetch(`${home}/call`, { ...call, headers: { ...page, origin: home } })).status).toBe(401);
    expect(
      (
        await fetch(`${home}/call`, {
          ...call,
          headers: { ...headers, ...page, origin: 'http://evil.example' },
        })
      ).status,
    ).toBe(403);
    expect((await fetch(`${home}/call`, { method: 'OPTIONS', headers })).status).toBe(405);
    const wrongHost = { ...headers, host: `evil.example:${served.port}` };
    expect((await ask(served.port, { path: '/', headers: wrongHost })).status).toBe(421);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/../../secret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//etc/passwd',
    '/index.html%00.js',
    '/media/../../secret.txt',
    '/media/0123456789abcdef/..%2f..%2fplan.json/film',
    '/media/0123456789abcdef/0123456789abcdef/film/../../../../secret.txt',
    '/inbox/x/0',
  ])('gives nothing for “%s”', async (address) => {
    const { served, headers } = await serveSmallLesson();
    const answer = await ask(served.port, {
      path: address,
      headers: { ...headers, host: `127.0.0.1:${served.port}` },
    });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.text).not.toContain('secret');
  });

  test('gives a film’s bytes by range, as the file has them', async () => {
    const { home, headers, lesson, clip, test: desk } = await serveSmallLesson({ isRead: true });
    const film = await readFile(path.join(desk.lessonFolder, 'clips', 'teal', 'IMG_1000.MP4'));
    const address = `${home}/media/${lesson}/${clip}/film`;
    const part = await fetch(address, { headers: { ...headers, range: 'bytes=100-299' } });
    expect([part.status, part.headers.get('content-range')]).toEqual([206, `bytes 100-299/${film.length}`]);
    expect(Buffer.from(await part.arrayBuffer())).toEqual(film.subarray(100, 300));
    const end = await fetch(address, { headers: { ...headers, range: 'bytes=-50' } });
    expect(Buffer.from(await end.arrayBuffer())).toEqual(film.subarray(-50));
    const beyond = await fetch(address, { headers: { ...headers, range: `bytes=${film.length}-` } });
    expect([beyond.status, beyond.headers.get('content-range')]).toEqual([416, `bytes */${film.length}`]);
    const whole = await fetch(address, { headers });
    expect([whole.status, whole.headers.get('content-type'), whole.headers.get('cache-control')]).toEqual([
      200,
      'video/mp4',
      'private, no-store',
    ]);
    expect(Buffer.from(await whole.arrayBuffer())).toEqual(film);
  });

  test('cuts a still where it is asked for, keeps it, and refuses odd sizes', async () => {
    const { home, headers, lesson, clip, test: desk } = await serveSmallLesson({ isRead: true });
    const address = `${home}/media/${lesson}/${clip}/still`;
    for (const _ of [1, 2]) {
      const still = await fetch(`${address}?ms=1500&height=90`, { headers });
      expect([still.status, still.headers.get('content-type')]).toEqual([200, 'image/jpeg']);
      expect(
        Buffer.from(await still.arrayBuffer())
          .subarray(0, 3)
          .toString('hex'),
      ).toBe('ffd8ff');
    }
    await stat(path.join(desk.lessonFolder, 'evidence', 'stills', `${clip}-1500-90.jpg`));
    for (const odd of [
      'ms=-1&height=90',
      'ms=0&height=99999',
      'ms=0',
      'ms=1e3&height=90',
      'ms=0&height=90;x',
    ]) {
      expect((await fetch(`${address}?${odd}`, { headers })).status, odd).toBe(400);
    }
  });

  test('is not led outside a film by any range', async () => {
    const { home, headers, lesson, clip, test: desk } = await serveSmallLesson({ isRead: true });
    const film = await readFile(path.join(desk.lessonFolder, 'clips', 'teal', 'IMG_1000.MP4'));
    const outside = ['bytes=-0', 'bytes=999999999999999-'];
    const passedOver = [
      'bytes=5-2',
      'bytes=0-1,4-5',
      'bytes=-1-',
      'bytes=0x1-2',
      'lines=1-2',
      `bytes=${'9'.repeat(400)}-`,
    ];
    for (const range of [...outside, ...passedOver]) {
      const answer = await fetch(`${home}/media/${lesson}/${clip}/film`, { headers: { ...headers, range } });
      const isOutside = outside.includes(range);
      expect(answer.status, range).toBe(isOutside ? 416 : 200);
      const bytes = Buffer.from(await answer.arrayBuffer());
      expect(bytes.equals(isOutside ? Buffer.alloc(0) : film), range).toBe(true);
    }
  });

  test('knows no call that the list does not name, and no lesson but by its id', async () => {
    const { home, headers, client } = await serveSmallLesson();
    for (const name of ['nonsense', '__proto__', 'constructor', 'toString']) {
      const body = `{"job":"job-00001","name":"${name}","input":{"__proto__":{"isLetIn":true}}}`;
      const asked = { ...headers, 'x-routemark-page': PAGE };
      const answer = await fetch(`${home}/call`, { method: 'POST', body, headers: asked });
      expect(await answer.json()).toEqual({ ok: false, problems: [{ code: 'call-unknown', name }] });
    }
    expect('isLetIn' in {}).toBe(false);
    for (const lesson of ['..', '../../x', '0123456789ABCDEF', '__proto__', '%2e%2e', '\u202egpj', '']) {
      const reply = await client.request('readLesson', { lesson, since: null });
      expect(reply, lesson).toMatchObject({ ok: false, problems: [{ code: 'call-malformed' }] });
    }
  });

  test('takes no message that is too long or none at all', async () => {
    const { home, headers } = await serveSmallLesson();
    const post = (body: string, page = PAGE) =>
      fetch(`${home}/call`, { method: 'POST', body, headers: { ...headers, 'x-routemark-page': page } }).then(
        ({ status }) => status,
      );
    expect(await post('x'.repeat(4 * 1024 * 1024 + 1))).toBe(413);
    expect(await post('{')).toBe(400);
    expect(await post('{}', '../../x')).toBe(400);
    expect(await post('{}')).toBe(200);
  });
});

describe('an upload', () => {
  const announce = async ({ client, lesson }: Served, ...names: readonly string[]) => {
    const files = names.map((name) => ({ path: name, sizeBytes: 5, modifiedMs: 1_747_300_000_000 }));
    return client.request('openInbox', { lesson, files });
  };

  test('arrives in the inbox, is brought in, and leaves nothing behind', async () => {
    const open = await serveSmallLesson();
    const opened = await announce(open, 'teal/IMG_2000.MOV');
    if (!opened.ok) throw new Error('the inbox opens');
    const { inbox, uploads } = opened.value;
    const sent = await fetch(open.home + uploads[0]?.url, {
      method: 'PUT',
      headers: open.headers,
      body: 'bytes',
    });
    expect(sent.status).toBe(204);
    const brought = await open.client.request('bringClips', { lesson: open.lesson, from: [inbox] });
    expect(brought).toMatchObject({ ok: true, value: { copied: ['teal/IMG_2000.MOV'], problems: [] } });
    const clips = path.join(open.test.lessonFolder, 'clips');
    const kept = path.join(clips, 'teal', 'IMG_2000.MOV');
    expect(await readFile(kept, 'utf8')).toBe('bytes');
    expect((await stat(kept)).mtimeMs).toBe(1_747_300_000_000);
    await expect(stat(path.join(clips, `.inbox-${inbox.slice(2, 10)}`))).rejects.toThrow();
  });

  test('of another size than announced is turned away', async () => {
    const open = await serveSmallLesson();
    const opened = await announce(open, 'teal/IMG_2000.MOV');
    const url = open.home + (opened.ok ? opened.value.uploads[0]?.url : '');
    for (const body of ['more bytes', 'few']) {
      expect((await fetch(url, { method: 'PUT', headers: open.headers, body })).status).toBe(413);
    }
  });

  test.each([
    '../x.mov',
    '/etc/x.mov',
    'a/../../x.mov',
    'a\\..\\x.mov',
    'a/./x.mov',
    'a//x.mov',
    'x\u0000.mov',
    'C:x.mov',
    'x.mov ',
  ])('is not taken under the name %j', async (name) => {
    const reply = await announce(await serveSmallLesson(), name);
    expect(reply).toMatchObject({ ok: false, problems: [{ code: 'file-name-bad' }] });
  });
});
