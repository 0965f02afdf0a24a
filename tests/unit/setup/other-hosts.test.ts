import { execFile } from 'node:child_process';
import { createSocket } from 'node:dgram';
import { lookup } from 'node:dns';
import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { takeAttempts } from '../../setup/other-hosts.ts';

// Addresses and names that belong to nobody: RFC 5737, section 3, RFC 3849, and RFC 2606, section 2.
const ELSEWHERE = { v4: '192.0.2.7', v6: '2001:db8::7', name: 'quay.invalid' };

/** The first words of each attempt since the last question; the place that it came from follows them. */
const takeHosts = () => takeAttempts().map((line) => line.split(' ').slice(0, 2).join(' '));

describe('an attempt to reach another host', () => {
  test('is refused and remembered, in every way to make it', async () => {
    expect(() => connect(80, ELSEWHERE.v4)).toThrow('not this machine');
    expect(() => connect({ port: 443, host: ELSEWHERE.v6 })).toThrow('not this machine');
    expect(() => lookup(ELSEWHERE.name, () => {})).toThrow('not this machine');
    const socket = createSocket('udp4');
    expect(() => socket.send('ahoy', 53, ELSEWHERE.v4)).toThrow('not this machine');
    socket.close();
    await expect(fetch(`http://${ELSEWHERE.name}/`)).rejects.toThrow();
    expect(takeHosts()).toEqual([
      `connect ${ELSEWHERE.v4}`,
      `connect ${ELSEWHERE.v6}`,
      `lookup ${ELSEWHERE.name}`,
      `datagram ${ELSEWHERE.v4}`,
      `connect ${ELSEWHERE.name}`,
    ]);
  });

  test('is remembered of a process, and of a thread of it, that bears it without a word', async () => {
    const quiet = `try { require('node:net').connect(80, '${ELSEWHERE.v4}'); } catch {}`;
    const thread = `new (require('node:worker_threads').Worker)(${JSON.stringify(quiet)}, { eval: true });`;
    await promisify(execFile)(process.execPath, ['-e', quiet + thread]);
    expect(takeHosts()).toEqual([`connect ${ELSEWHERE.v4}`, `connect ${ELSEWHERE.v4}`]);
  });
});

test('this machine can be reached by all its names, and by a socket of its file system', async () => {
  const server = createServer((socket: Socket) => socket.end()).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  const ways = [connect(port), connect(port, '127.0.0.1'), connect({ port, host: 'localhost' })];
  await Promise.all(ways.map((socket) => once(socket, 'connect')));
  for (const socket of ways) socket.destroy();
  const [error] = await once(connect('/no/such/socket'), 'error');
  expect(error).toMatchObject({ code: 'ENOENT' });
  server.close();
  expect(takeAttempts()).toEqual([]);
});
