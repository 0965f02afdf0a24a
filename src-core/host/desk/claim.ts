import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, rmSync } from 'node:fs';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir, userInfo } from 'node:os';
import path from 'node:path';

// One running Routemark for a thing (a lesson folder, the fixed port's desk). A socket instead of a lock file: it ends
// with its process, however that ends, and it can be talked to, so that the second start can ask the first one.

/** A thing held by this process. */
export interface Claim {
  readonly release: () => void;
}

/** What came of asking for a thing: held now, or the answer of the process that has it. */
export type ClaimOutcome =
  | { readonly held: true; readonly claim: Claim }
  | { readonly held: false; readonly answer: string };

/** How long the other process may take to answer. */
const ANSWER_MS = 3000;

const LONGEST_MESSAGE = 4096;

/**
 * Claims a thing for this process, or passes `message` to the process of the same user that has it.
 * `onMessage` answers such messages while the claim is held.
 */
export async function claim(
  thing: string,
  message: string,
  onMessage: (message: string) => string | Promise<string>,
): Promise<ClaimOutcome> {
  const address = getAddress(thing);
  for (let attempt = 0; attempt < 3; attempt += 1) {
    const server = await listen(address, onMessage);
    if (server) return { held: true, claim: { release: () => release(server, address) } };
    const answer = await ask(address, message);
    if (answer !== null) return { held: false, answer };
    // Nobody answers: the socket was left behind by a process that was killed.
    if (process.platform !== 'win32') rmSync(address, { force: true });
  }
  return { held: false, answer: '' };
}

function getAddress(thing: string): string {
  const { username, uid } = userInfo();
  const hash = createHash('sha256').update(`${username} ${thing}`).digest('hex').slice(0, 24);
  if (process.platform === 'win32') return `\\\\.\\pipe\\routemark-${hash}`;
  const folder = path.join(process.env.XDG_RUNTIME_DIR || tmpdir(), `routemark-${uid}`);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
  return path.join(folder, `${hash}.sock`);
}

function listen(
  address: string,
  onMessage: (message: string) => string | Promise<string>,
): Promise<Server | null> {
  const server = createServer({ allowHalfOpen: true }, (socket) => {
    let text = '';
    socket.setEncoding('utf8').setTimeout(ANSWER_MS, () => socket.destroy());
    socket.on('error', () => socket.destroy());
    socket.on('data', (part: string) => {
      text += part;
      if (text.length > LONGEST_MESSAGE) socket.destroy();
    });
    socket.on('end', async () => socket.end(await onMessage(text)));
  });
  server.unref();
  return new Promise((resolve) => {
    server.once('error', () => resolve(null));
    server.listen(address, () => resolve(server));
  });
}

function ask(address: string, message: string): Promise<string | null> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect({ path: address, allowHalfOpen: true });
    socket.setEncoding('utf8').setTimeout(ANSWER_MS, () => socket.destroy());
    socket.once('connect', () => socket.end(message));
    socket.on('data', (part: string) => {
      answer += part;
    });
    socket.once('error', () => resolve(null));
    socket.once('close', (hadError) => resolve(hadError ? null : answer));
  });
}

function release(server: Server, address: string): void {
  server.close();
  if (process.platform !== 'win32') rmSync(address, { force: true });
}
