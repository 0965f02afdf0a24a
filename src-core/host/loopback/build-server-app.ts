import { type Context, Hono } from 'hono';
import { buildWireText, readWireText } from '../../contract/wire-text.ts';
import type { Desk } from '../desk/desk.ts';
import { answerMedia } from '../media/answer-media.ts';
import type { PageFiles } from '../page-files.ts';
import { findRefusal, getCookieName } from './guard.ts';
import type { OpeningKeys } from './keys.ts';
import type { Pages } from './pages.ts';

/** What the server is made of. */
export interface ServerParts {
  readonly desk: Desk;
  readonly pages: Pages;
  /** Null: the page was not built. */
  readonly files: PageFiles | null;
  readonly keys: OpeningKeys;
  readonly secret: string;
  /** Known once the server listens. */
  readonly getPort: () => number;
}

/** The largest message of a page: announcing five thousand files, or a long plan. */
const LONGEST_MESSAGE_BYTES = 4 * 1024 * 1024;

const PAGE_ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

const CLOSED = 'This window is not let in. Start Routemark again and use the window that it opens.\n';

/** The server as a function from requests to answers; see `guard.ts` for who is let in. */
export function buildServerApp(parts: ServerParts): Hono {
  const { desk, pages, files } = parts;
  const app = new Hono();
  app.use(async (context, next) => {
    const { method, path: pathname } = context.req;
    const header = (name: string) => context.req.header(name) ?? null;
    const refusal = findRefusal({ method, pathname, header }, parts.getPort(), parts.secret);
    if (refusal) return context.text(CLOSED, refusal.status, { 'cache-control': 'no-store' });
    await next();
    return undefined;
  });
  app.get('/open', (context) => letIn(context, parts));
  app.post('/call', async (context) => {
    const page = context.req.header('x-routemark-page') ?? '';
    const message = PAGE_ID.test(page) ? await readMessage(context) : TOO_BAD;
    if (message === TOO_LONG) return context.body(null, 413);
    if (message === TOO_BAD) return context.body(null, 400);
    const reply = await pages.getFace(page).request(message);
    return context.body(buildWireText(reply), 200, {
      'content-type': 'application/json',
      'cache-control': 'no-store',
    });
  });
  app.post('/cancel', async (context) => {
    const page = context.req.header('x-routemark-page') ?? '';
    const message = PAGE_ID.test(page) ? await readMessage(context) : TOO_BAD;
    if (typeof message !== 'object' || message === null || !('job' in message))
      return context.body(null, 400);
    pages.getFace(page).cancel(message.job);
    return context.body(null, 204);
  });
  app.get('/events', (context) => {
    const page = context.req.query('page') ?? '';
    if (!PAGE_ID.test(page)) return context.body(null, 400);
    const headers = { 'content-type': 'text/event-stream', 'cache-control': 'no-store' };
    return new Response(pages.openStream(page), { headers });
  });
  app.put('/inbox/:inbox/:file', (context) => receiveFile(context, desk));
  app.get('*', async (context) => {
    const answer =
      (await answerMedia(desk.lessons, context.req.raw)) ?? (await files?.answer(context.req.path)) ?? null;
    if (answer) return answer;
    return files ? context.body(null, 404) : context.text('The window was not built: npm run page\n', 503);
  });
  app.onError((fault, context) => {
    desk.onFault('server', fault);
    return context.body(null, 500);
  });
  return app;
}

/** Exchanges the key of the opening address for the cookie, and takes the key out of the address. */
function letIn(context: Context, { keys, secret, getPort }: ServerParts): Response {
  if (!keys.take(context.req.query('key') ?? '')) return context.text(CLOSED, 401);
  return new Response(null, {
    status: 303,
    headers: {
      location: '/',
      'set-cookie': `${getCookieName(getPort())}=${secret}; HttpOnly; SameSite=Strict; Path=/`,
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
    },
  });
}

const TOO_LONG = Symbol('too long');
const TOO_BAD = Symbol('no message');

/** The message of a request, read no further than it may be long. */
async function readMessage(context: Context): Promise<unknown> {
  if (Number(context.req.header('content-length') ?? 0) > LONGEST_MESSAGE_BYTES) return TOO_LONG;
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of context.req.raw.body ?? []) {
    length += part.byteLength;
    if (length > LONGEST_MESSAGE_BYTES) return TOO_LONG;
    parts.push(part);
  }
  try {
    return readWireText(Buffer.concat(parts).toString('utf8'));
  } catch {
    return TOO_BAD;
  }
}

async function receiveFile(context: Context, { inboxes }: Desk): Promise<Response> {
  const inbox = inboxes.find(context.req.param('inbox') ?? '');
  const at = context.req.param('file') ?? '';
  const file = /^\d{1,4}$/.test(at) ? inbox?.files[Number(at)] : undefined;
  if (!inbox || !file) return context.body(null, 404);
  const announced = Number(context.req.header('content-length') ?? file.sizeBytes);
  if (announced !== file.sizeBytes) return context.body(null, 413);
  const bytes = context.req.raw.body ?? new Blob([]).stream();
  const received = await inboxes.receive(inbox, file, bytes);
  return received.ok ? context.body(null, 204) : context.json(received.problems, 422);
}
