// Runs a command in a network namespace with nothing but loopback in it, and counts every attempt of it and its
// children to reach another host: node scripts/without-network.mjs <program> [arguments…]
//
// Ends as the command does; with 3 where it ended well but tried to reach another host. Where such a namespace is not
// to be had, says why and runs the command as it is.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const OWN = fileURLToPath(import.meta.url);
const INSIDE = '--inside';
const TRIED = 3;

const say = (sentence) => process.stderr.write(`${sentence}\n`);

function run(program, args) {
  const { status, signal, error } = spawnSync(program, args, { stdio: 'inherit' });
  if (error) say(`${program} cannot be run: ${error.message}`);
  return status ?? (signal ? 1 : 2);
}

/**
 * How to come into a namespace of one's own: as root plainly, else in a user namespace as oneself, else as its root (so
 * that tests for root alone run there too, and may fail); null: not at all.
 */
function findWay() {
  const ways = process.getuid?.() === 0 ? [['-n']] : [['-c', '--keep-caps', '-n'], ['-rn']];
  return ways.find((way) => spawnSync('unshare', [...way, 'true']).status === 0) ?? null;
}

/** Loopback is down in a new namespace. Where there is no `ip`, perl asks the kernel itself (SIOCSIFFLAGS, netdevice(7)). */
function raiseLoopback() {
  const ask = 'socket(S,2,2,0); ioctl(S,0x8914,pack("a16s","lo",0x41)) or die';
  const done = [
    ['ip', ['link', 'set', 'lo', 'up']],
    ['perl', ['-e', ask]],
  ].some(([program, args]) => spawnSync(program, args).status === 0);
  if (!done) say('Loopback could not be raised: neither ip nor perl is here.');
  return done;
}

/** The kernel's count, for this namespace, of what it had no route for: RFC 4293, ipSystemStatsOutNoRoutes. */
function countAttempts() {
  const lines = readFileSync('/proc/net/snmp', 'utf8').split('\n');
  const [names = [], values = []] = lines
    .filter((line) => line.startsWith('Ip:'))
    .map((line) => line.split(' '));
  return Number(values[names.indexOf('OutNoRoutes')]);
}

const args = process.argv.slice(2);
if (args[0] === INSIDE) {
  const [, program, ...rest] = args;
  if (!raiseLoopback()) process.exit(2);
  const code = run(program, rest);
  const attempts = countAttempts();
  if (attempts > 0) say(`Attempts to reach another host: ${attempts}.`);
  process.exit(code === 0 && attempts > 0 ? TRIED : code);
}
const way = findWay();
if (way) process.exit(run('unshare', [...way, process.execPath, OWN, INSIDE, ...args]));
say('No network namespace can be made here, so this runs with the network as it is.');
const [program = '', ...rest] = args;
process.exit(run(program, rest));
