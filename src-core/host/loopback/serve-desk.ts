import type { Server } from 'node:http';
import { type ServerType, serve } from '@hono/node-server';
import type { Desk } from '../desk/desk.ts';
import { openPageFiles } from '../page-files.ts';
import { buildServerApp } from './build-server-app.ts';
import { openOpeningKeys, readCookieSecret } from './keys.ts';
import { openPages } from './pages.ts';

/** The port that a desk has unless it is taken: the page's own storage belongs to an address with its port. */
export const DESK_PORT = 41_708;

/** A desk that is served to browsers of this machine. */
export interface ServedDesk {
  readonly port: number;
  /** An address that lets one browser in, once, within two minutes. */
  readonly makeAddress: () => string;
  readonly close: () => Promise<void>;
}

/** Where to serve, and which page. */
export interface ServeOptions {
  /** Port wished for; 0 takes any that is free. */
  readonly port: number;
  /** Folder of the built page. */
  readonly pageFolder: string;
}

/**
 * Serves a desk on 127.0.0.1 alone. Where the port is taken, any free one is used: what the page kept for itself under
 * the usual one is then out of reach, but no mark, for those are in the lesson folders.
 */
export async function serveDesk(desk: Desk, { port, pageFolder }: ServeOptions): Promise<ServedDesk> {
  const pages = openPages(desk);
  const keys = openOpeningKeys(() => performance.now());
  const [files, secret] = [await openPageFiles(pageFolder), await readCookieSecret(desk.options.home)];
  let own = port;
  const app = buildServerApp({ desk, pages, files, keys, secret, getPort: () => own });
  const server = (await listen(app.fetch, port)) ?? (await listen(app.fetch, 0));
  if (!server) throw new Error('no port of this machine can be listened on');
  const address = server.address();
  if (typeof address === 'object' && address) own = address.port;
  return {
    port: own,
    makeAddress: () => `http://127.0.0.1:${own}/open?key=${keys.make()}`,
    close: async () => {
      pages.closeAll();
      await new Promise<void>((resolve) => {
        server.close(() => resolve());
        (server as Server).closeAllConnections();
      });
    },
  };
}

function listen(fetch: Parameters<typeof serve>[0]['fetch'], port: number): Promise<ServerType | null> {
  return new Promise((resolve, reject) => {
    const server = serve({ fetch, port, hostname: '127.0.0.1', overrideGlobalObjects: false }, () =>
      resolve(server),
    );
    // A film from a slow stick takes longer to send than Node allows a request by itself.
    (server as Server).requestTimeout = 0;
    server.once('error', (error: NodeJS.ErrnoException) =>
      error.code === 'EADDRINUSE' || error.code === 'EACCES' ? resolve(null) : reject(error),
    );
  });
}
