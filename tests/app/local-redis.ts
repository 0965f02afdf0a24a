import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';

/** A Redis of the test's own, on this machine's loopback alone; it keeps nothing. */
export interface LocalRedis {
  readonly address: string;
  readonly stop: () => Promise<void>;
}

/** Whether a Redis can be started here; where not, says so once on standard error. */
export function hasRedis(): boolean {
  const found = spawnSync('redis-server', ['--version']).status === 0;
  if (!found) process.stderr.write('Skipped: no redis-server here (Debian: apt-get install redis-server).\n');
  return found;
}

/** Starts it on a free port; resolves once it takes connections. */
export async function startRedis(): Promise<LocalRedis> {
  const port = await findFreePort();
  const place = ['--bind', '127.0.0.1', '--port', String(port), '--dir', tmpdir()];
  const child = spawn('redis-server', [...place, '--save', '', '--appendonly', 'no'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  await new Promise<void>((resolve, reject) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      if (text.includes('Ready to accept connections')) resolve();
    });
    child.once('exit', () => reject(new Error('redis-server did not start')));
  });
  return {
    address: `redis://127.0.0.1:${port}`,
    stop: async () => {
      child.kill();
      await ended;
    },
  };
}

async function findFreePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return typeof address === 'object' && address ? address.port : 0;
}
