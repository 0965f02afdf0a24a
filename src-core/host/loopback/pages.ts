import type { DeskEvent } from '../../contract/events.ts';
import { buildWireText } from '../../contract/wire-text.ts';
import { type Face, type FaceHost, openFace } from '../desk/face.ts';

/** How long a page may be without its stream of events before it counts as closed. */
const GONE_MS = 60_000;

/** Streams held at once: a browser gives one place six connections, and calls and films need theirs. */
const MOST_STREAMS = 3;

/** A line that says nothing, so that a broken connection is noticed. */
const PULSE_MS = 20_000;

/** The pages that are open in browsers, each a face of its own. */
export interface Pages {
  /** The face of a page, made when it is first heard of. */
  readonly getFace: (page: string) => Face;
  /** The stream of a page's events, as Server-Sent Events. */
  readonly openStream: (page: string) => ReadableStream<Uint8Array>;
  readonly closeAll: () => void;
}

interface Page {
  readonly face: Face;
  goneTimer: NodeJS.Timeout | undefined;
}

/** No page is open yet. */
export function openPages(host: FaceHost): Pages {
  const pages = new Map<string, Page>();
  const streams = new Set<{ readonly retire: () => void }>();
  const getPage = (id: string): Page => {
    const known = pages.get(id);
    if (known) return known;
    const page: Page = { face: openFace(host), goneTimer: undefined };
    pages.set(id, page);
    watchGone(id, page);
    return page;
  };
  const watchGone = (id: string, page: Page) => {
    clearTimeout(page.goneTimer);
    page.goneTimer = setTimeout(() => {
      page.face.close();
      pages.delete(id);
    }, GONE_MS).unref();
  };
  return {
    getFace: (id) => getPage(id).face,
    openStream: (id) => {
      const page = getPage(id);
      clearTimeout(page.goneTimer);
      const encoder = new TextEncoder();
      let end = () => {};
      return new ReadableStream<Uint8Array>({
        start: (controller) => {
          const send = (text: string) => controller.enqueue(encoder.encode(text));
          const leave = page.face.subscribe((event: DeskEvent) => send(`data: ${buildWireText(event)}\n\n`));
          const pulse = setInterval(() => send(': here\n\n'), PULSE_MS).unref();
          const stream = {
            retire: () => {
              send('event: retired\ndata: {}\n\n');
              end();
              controller.close();
            },
          };
          end = () => {
            leave();
            clearInterval(pulse);
            streams.delete(stream);
            watchGone(id, page);
          };
          streams.add(stream);
          send('retry: 1000\n\n');
          const [oldest] = streams;
          if (streams.size > MOST_STREAMS) oldest?.retire();
        },
        cancel: () => end(),
      });
    },
    closeAll: () => {
      for (const stream of streams) stream.retire();
      for (const { face, goneTimer } of pages.values()) {
        clearTimeout(goneTimer);
        face.close();
      }
      pages.clear();
    },
  };
}
