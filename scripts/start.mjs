// `npm start [-- lesson]`: the window. The desktop shell where Electron's binary is here or can be fetched; otherwise
// the same window in this machine's browser. With Node's own modules alone.
//   ROUTEMARK_FACE=window|browser  does not choose
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const ELECTRON = join(ROOT, 'node_modules', 'electron');
const MINUTE_MS = 60_000;
const words = process.argv.slice(2);
// What only the browser's face knows is the wish for it.
const wanted = words.some((word) => /^--(port|no-open)\b/.test(word))
  ? 'browser'
  : (process.env.ROUTEMARK_FACE ?? '');

const say = (sentence) => process.stderr.write(`${sentence}\n`);

/** Runs a Node program to its end, its talk on standard error. */
function run(args, limitMs = 10 * MINUTE_MS) {
  return (
    spawnSync(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 2, 2], timeout: limitMs }).status === 0
  );
}

/** When the newest file below some folders was changed. */
function findNewest(folders) {
  const times = folders.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs),
  );
  return Math.max(0, ...times);
}

/** Builds what is not there or older than its sources. */
function buildIfStale(built, folders, args, what) {
  const made = statSync(join(ROOT, built), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  if (made > findNewest(folders)) return;
  say(`Building ${what} …`);
  if (run(args)) return;
  say(`${what} could not be built.`);
  process.exit(2);
}

/** Electron's program; null where its binary was not fetched. */
function findElectron() {
  try {
    const program = join(ELECTRON, 'dist', readFileSync(join(ELECTRON, 'path.txt'), 'utf8'));
    return existsSync(program) ? program : null;
  } catch {
    return null;
  }
}

/** Whether the place that Electron is fetched from answers at all; a machine without a way out is told at once. */
async function isWithinReach() {
  const place = process.env.ELECTRON_MIRROR ?? process.env.npm_config_electron_mirror ?? 'https://github.com';
  try {
    await fetch(place, { method: 'HEAD', signal: AbortSignal.timeout(4000) });
    return true;
  } catch {
    return false;
  }
}

async function obtainElectron() {
  const here = findElectron();
  if (here || !existsSync(ELECTRON) || !(await isWithinReach())) return here;
  say('Fetching Electron, once …');
  run([join(ELECTRON, 'install.js')]);
  return findElectron();
}

function hasScreen() {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/** Why the desktop shell cannot be had; null where it was shown, which is until its windows are closed. */
async function showShell() {
  if (!hasScreen()) return 'there is no screen';
  const program = await obtainElectron();
  if (!program) return 'Electron’s binary is not here and could not be fetched';
  buildIfStale(
    'dist/electron/main.mjs',
    ['electron', 'src-core', 'renderer/text'],
    ['--import', 'tsx', 'electron/packaging/build-shell.ts'],
    'The desktop shell',
  );
  const begunMs = Date.now();
  const child = spawn(program, ['.', ...words], { cwd: ROOT, stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  const code = await new Promise((resolve) => {
    child.once('error', () => resolve(1));
    child.once('exit', (status) => resolve(status ?? 0));
  });
  return code !== 0 && Date.now() - begunMs < MINUTE_MS / 6 ? `Electron ended at once (${code})` : null;
}

function showInBrowser() {
  const args = ['--import', 'tsx', 'src-core/cli/main.ts', 'desk', ...words];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  // Ctrl-C reaches both; the desk ends in its own time.
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.once('exit', (code) => process.exit(code ?? 0));
}

buildIfStale(
  'dist/renderer/index.html',
  ['renderer', 'src-core'],
  ['node_modules/vite/bin/vite.js', 'build', 'renderer', '--logLevel', 'warn'],
  'The window',
);
const reason = wanted === 'browser' ? 'that was asked for' : await showShell();
if (reason !== null && wanted === 'window') {
  say(`No desktop window: ${reason}.`);
  process.exit(2);
}
if (reason !== null) {
  say(`The window opens in the browser, for ${reason}.`);
  showInBrowser();
}
