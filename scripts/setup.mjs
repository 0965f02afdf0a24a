// Makes a fresh clone ready to run, with Node's own modules alone; returns at once when nothing is left to do.
//   --quiet              says nothing on success (no flag ever writes to standard output)
//   --for-tests          also perl, ffprobe, poppler, zbar and Redis; without them the tests that need them skip
//   --for-browser-tests  also a Chromium
//
// Exit 0: ready. Exit 2: something is missing that only you can provide; the last line says what to do.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { accessSync, constants, existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const MODULES = join(ROOT, 'node_modules');
const STAMP = join(MODULES, '.routemark-lock');
const OLDEST_NODE = [20, 19];
const MINUTE_MS = 60_000;
const flags = new Set(process.argv.slice(2));
const exe = process.platform === 'win32' ? '.exe' : '';
const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };

const say = (sentence) => process.stderr.write(`${sentence}\n`);
function stop(sentence) {
  say(sentence);
  process.exit(2);
}

/** Runs a program with its talk on standard error; true when it ended well within its time. */
function run(program, args, limitMs) {
  const child = spawn(program, args, { cwd: ROOT, env, stdio: ['ignore', 2, 2], timeout: limitMs });
  return new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('close', (status) => resolve(status === 0));
  });
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

function findOnPath(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter).filter(Boolean)) {
    const path = join(folder, name + exe);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {}
  }
  return null;
}

/** Whether npm's own record of what is installed holds all that the lock file asks for (optional parts aside). */
function isInstalledAsLocked() {
  const wanted = readJson(join(ROOT, 'package-lock.json'))?.packages ?? {};
  const present = readJson(join(MODULES, '.package-lock.json'))?.packages ?? {};
  return Object.entries(wanted).every(([place, entry]) => {
    if (place === '' || entry.optional || entry.devOptional) return true;
    return present[place]?.version === entry.version && existsSync(join(ROOT, place));
  });
}

/** Whether a process still runs; somebody else's process counts as running. */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Runs `work` while no other setup of this clone does; a lock left behind by a dead process is taken over. */
async function alone(work) {
  const key = createHash('sha256').update(ROOT).digest('hex').slice(0, 16);
  const lock = join(tmpdir(), `routemark-setup-${key}`);
  const giveUp = Date.now() + 15 * MINUTE_MS;
  for (let told = false; ; told = true) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') stop(`The folder for temporary files cannot be written: ${error.message}`);
    }
    if (Date.now() > giveUp) stop(`Another setup seems to hang. End it, delete ${lock} and try again.`);
    if (isLeftBehind(lock)) rmSync(lock, { force: true });
    else if (!told) say('Another setup of this folder is at work; waiting for it.');
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 250);
  }
  process.once('exit', () => rmSync(lock, { force: true }));
  await work();
}

function isLeftBehind(lock) {
  try {
    const pid = Number(readFileSync(lock, 'utf8'));
    // An empty lock is one being written at this moment, unless it is old.
    return pid > 0 ? !isAlive(pid) : Date.now() - statSync(lock).mtimeMs > MINUTE_MS;
  } catch {
    return false;
  }
}

/** Whether the modules are there. */
async function installModules() {
  if (isInstalledAsLocked()) return true;
  say('Installing the node modules named in package-lock.json …');
  // Without install scripts: those of ffmpeg-static and the like download programs, which may hang or fail.
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const done = npm?.endsWith('.js')
    ? run(process.execPath, [npm, ...args], 10 * MINUTE_MS)
    : run(exe ? 'npm.cmd' : 'npm', args, 10 * MINUTE_MS);
  return (await done) && isInstalledAsLocked();
}

/** Where an ffmpeg may be, best first: the same order as src-core/host/find-ffmpeg.ts. */
function listFfmpegs() {
  const own = join(MODULES, 'ffmpeg-static', `ffmpeg${exe}`);
  return [process.env.ROUTEMARK_FFMPEG, own, findOnPath('ffmpeg')].filter(Boolean);
}

function findWorkingFfmpeg() {
  return listFfmpegs().find((path) => {
    if (!existsSync(path)) return false;
    const asked = spawnSync(path, ['-hide_banner', '-version'], { timeout: MINUTE_MS / 2, encoding: 'utf8' });
    return asked.status === 0 && asked.stdout.startsWith('ffmpeg version');
  });
}

let isListFresh = false;

async function installPackages(...names) {
  if (names.length === 0) return true;
  if (process.getuid?.() !== 0 || !findOnPath('apt-get')) return false;
  say(`Installing Debian's ${names.join(', ')} …`);
  const patient = ['-o', 'DPkg::Lock::Timeout=120', '-o', 'Acquire::Retries=2', '-qq'];
  if (!isListFresh) isListFresh = await run('apt-get', [...patient, 'update'], 3 * MINUTE_MS);
  const install = ['install', '-y', '--no-install-recommends', ...names];
  return run('apt-get', [...patient, ...install], 10 * MINUTE_MS);
}

function downloadFfmpeg() {
  say('Downloading ffmpeg (package ffmpeg-static) …');
  return run(process.execPath, [join(MODULES, 'ffmpeg-static', 'install.js')], MINUTE_MS);
}

async function obtainFfmpeg() {
  for (const step of [() => {}, downloadFfmpeg, () => installPackages('ffmpeg')]) {
    await step();
    const found = findWorkingFfmpeg();
    if (found) return found;
  }
  return stop(
    'No working ffmpeg. Install one (Debian: sudo apt-get install ffmpeg) or set ROUTEMARK_FFMPEG.',
  );
}

/** What tells whether a program is still the one that was tried. */
function describeFile(path) {
  const found = path && statSync(path, { throwIfNoEntry: false });
  return found ? { path, size: found.size, changedMs: found.mtimeMs } : null;
}

/** The oracles' programs, and the Debian package that each is in. */
const TEST_TOOLS = {
  perl: 'perl',
  ffprobe: 'ffmpeg',
  pdftoppm: 'poppler-utils',
  zbarimg: 'zbar-tools',
  'redis-server': 'redis-server',
};

const listMissingTools = () => Object.keys(TEST_TOOLS).filter((name) => !findOnPath(name));
const listPackages = (tools) => [...new Set(tools.map((name) => TEST_TOOLS[name]))];

async function obtainTestTools() {
  const missing = listMissingTools();
  if (missing.length > 0 && !(await installPackages(...listPackages(missing))))
    say(`Not found: ${missing.join(', ')}. The tests that need them skip.`);
}

function hasChromium() {
  const named = process.env.ROUTEMARK_CHROMIUM ?? process.env.CHROMIUM_PATH;
  const names = [
    'chromium-headless-shell',
    'chromium',
    'chromium-browser',
    'google-chrome',
    'google-chrome-stable',
  ];
  return (named && existsSync(named)) || names.some(findOnPath);
}

async function obtainChromium() {
  if (hasChromium()) return;
  if ((await installPackages('chromium-headless-shell')) || (await installPackages('chromium'))) return;
  stop('No Chromium. Install one (Debian: sudo apt-get install chromium) or set ROUTEMARK_CHROMIUM.');
}

/** All that is asked for and not there at one go; what does not come so is sought again later, one after another. */
function installWhatTestsNeed() {
  const tools = flags.has('--for-tests') ? listPackages(listMissingTools()) : [];
  const isBrowserMissing = flags.has('--for-browser-tests') && !hasChromium();
  return installPackages(...tools, ...(isBrowserMissing ? ['chromium-headless-shell'] : []));
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1])) {
  stop(`Routemark needs Node ${OLDEST_NODE.join('.')} or newer; this is ${process.versions.node}.`);
}

const lockHash = createHash('sha256')
  .update(readFileSync(join(ROOT, 'package-lock.json')))
  .digest('hex');
const stamp = readJson(STAMP);
const isReady =
  stamp?.lock === lockHash &&
  stamp.askedFor === (process.env.ROUTEMARK_FFMPEG ?? null) &&
  JSON.stringify(describeFile(stamp.ffmpeg?.path)) === JSON.stringify(stamp.ffmpeg);
if (!isReady) {
  await alone(async () => {
    // npm and Debian's packages fetch and unpack side by side.
    const [hasModules] = await Promise.all([installModules(), installWhatTestsNeed()]);
    if (!hasModules) stop('npm could not install the node modules. Run `npm ci` to see why.');
    const ffmpeg = describeFile(await obtainFfmpeg());
    const made = { lock: lockHash, askedFor: process.env.ROUTEMARK_FFMPEG ?? null, ffmpeg };
    writeFileSync(STAMP, `${JSON.stringify(made)}\n`);
  });
  if (!flags.has('--quiet')) say('Ready.');
}
if (flags.has('--for-tests')) await obtainTestTools();
if (flags.has('--for-browser-tests')) await obtainChromium();
