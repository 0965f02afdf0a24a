// Refuses what would leave this machine, in whatever Node process it is loaded first, and writes a line about it to the
// file that ROUTEMARK_OTHER_HOSTS names: an attempt that the program swallows still fails its test.
'use strict';

const dgram = require('node:dgram');
const dns = require('node:dns');
const { appendFileSync } = require('node:fs');
const { syncBuiltinESMExports } = require('node:module');
const net = require('node:net');

/** Host names and numbers that lead back to this machine: RFC 6761, 6.3, RFC 1122, 3.2.1.3, and RFC 4291, 2.5.3. */
function isOwn(host) {
  const name = String(host).toLowerCase();
  const plain = name.replace(/^::ffff:/, '');
  if (net.isIPv4(plain)) return plain.startsWith('127.') || plain === '0.0.0.0';
  return ['localhost', '::1', '::'].includes(name) || name.endsWith('.localhost');
}

function refuse(way, host) {
  const place = new Error().stack
    ?.split('\n')
    .find((line) => /^\s+at /.test(line) && !/loopback-guard|node:/.test(line));
  const log = process.env.ROUTEMARK_OTHER_HOSTS;
  if (log) appendFileSync(log, `${way} ${host}${place ?? ''}\n`);
  throw Object.assign(new Error(`${way} ${host}: not this machine`), { code: 'ENETUNREACH' });
}

/** The host of a connect, in any of the ways to call it; null for a socket of this machine's file system. */
function findHost([first, second]) {
  const options = Array.isArray(first) ? first[0] : first;
  if (typeof options === 'object' && options !== null)
    return options.path === undefined ? (options.host ?? 'localhost') : null;
  if (typeof options === 'string' && !/^\d+$/.test(options)) return null;
  return typeof second === 'string' ? second : 'localhost';
}

function guard(owner, name, way, getHost) {
  const original = owner[name];
  owner[name] = function guarded(...args) {
    const host = getHost(args);
    if (host !== null && !isOwn(host)) refuse(way, host);
    return original.apply(this, args);
  };
}

if (!globalThis[Symbol.for('routemark.loopback-guard')]) {
  globalThis[Symbol.for('routemark.loopback-guard')] = true;
  guard(net.Socket.prototype, 'connect', 'connect', findHost);
  for (const owner of [dns, dns.promises])
    for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6'])
      guard(owner, name, name, ([host]) => (net.isIP(String(host)) ? null : host));
  guard(dgram.Socket.prototype, 'connect', 'datagram', ([, host]) =>
    typeof host === 'string' ? host : 'localhost',
  );
  guard(
    dgram.Socket.prototype,
    'send',
    'datagram',
    (args) => args.slice(1).find((one) => typeof one === 'string') ?? 'localhost',
  );
  syncBuiltinESMExports();
}
