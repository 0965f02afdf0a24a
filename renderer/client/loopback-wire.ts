import type { Wire } from '../../src-core/contract/desk-client.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';

/** What a page says where nobody answers. */
const UNREACHABLE = { ok: false, problems: [{ code: 'desk-unreachable' }] };

/** How long a request waits for the stream of events, so that its progress has somewhere to go. */
const STREAM_PATIENCE_MS = 2000;

/** The wire of a page in a browser: requests by POST, events by one stream, all to where the page came from. */
export function openLoopbackWire(): Wire {
  const page = crypto.randomUUID();
  const stream = openEventStream(page);
  const post = (path: string, body: unknown) =>
    fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-routemark-page': page },
      body: buildWireText(body),
    });
  return {
    request: async (message) => {
      await stream.opened;
      try {
        const reply = await post('/call', message);
        return reply.ok ? readWireText(await reply.text()) : UNREACHABLE;
      } catch {
        return UNREACHABLE;
      }
    },
    cancel: (job) => void post('/cancel', { job }).catch(() => {}),
    subscribe: stream.subscribe,
    newJob: () => crypto.randomUUID(),
  };
}

interface EventStream {
  readonly opened: Promise<unknown>;
  readonly subscribe: Wire['subscribe'];
}

/** Comes back by itself after a break, and says so: whatever was missed has to be read again. */
function openEventStream(page: string): EventStream {
  const listeners = new Set<(event: DeskEvent) => void>();
  const tell = (event: DeskEvent) => {
    for (const listener of listeners) listener(event);
  };
  let wasOpen = false;
  const open = (onOpen: () => void) => {
    const source = new EventSource(`/events?page=${page}`);
    source.addEventListener('open', () => {
      onOpen();
      if (wasOpen) tell({ kind: 'reconnected' });
      wasOpen = true;
    });
    source.addEventListener('message', ({ data }) => tell(readWireText(String(data)) as DeskEvent));
    // A browser allows few connections to one place: of many windows the oldest steps back until it is looked at.
    source.addEventListener('retired', () => {
      source.close();
      document.addEventListener('visibilitychange', () => open(() => {}), { once: true });
    });
  };
  const opened = new Promise<void>((resolve) => {
    open(resolve);
    setTimeout(resolve, STREAM_PATIENCE_MS);
  });
  return {
    opened,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
