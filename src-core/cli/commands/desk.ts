import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildDemoLesson } from '../../../fixtures/build-demo-lesson.ts';
import { claim } from '../../host/desk/claim.ts';
import { type Desk, openDesk } from '../../host/desk/desk.ts';
import { getHomeFolder } from '../../host/desk/desk-record.ts';
import { DESK_PORT, type ServedDesk, serveDesk } from '../../host/loopback/serve-desk.ts';
import { openBrowser } from '../../host/open-browser.ts';
import { PLAIN_NAMES, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `desk` as typed. */
export interface DeskCommandOptions {
  readonly port?: string;
  /** False with `--no-open`: the address is printed and no browser is started. */
  readonly open: boolean;
}

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** `desk [lesson]`: serves the window to a browser of this machine, until Ctrl-C. A second start joins the first. */
export async function runDesk(
  folder: string | undefined,
  options: DeskCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const home = getHomeFolder();
  const port = options.port === undefined ? DESK_PORT : Number(options.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    terminal.say(`! “${options.port}” is no port. Ports are 1024 to 65535; 0 takes any that is free.\n`);
    return 2;
  }
  const held = { desk: null as Desk | null, served: null as ServedDesk | null };
  const wanted = folder === undefined ? '' : path.resolve(folder);
  const claimed = await claim(`desk ${home}`, wanted, async (lesson) => {
    if (lesson !== '') await held.desk?.openFirst(lesson);
    return held.served?.makeAddress() ?? '';
  });
  if (!claimed.held) return showOther(claimed.answer, options, terminal);
  try {
    held.desk = await openDesk({
      face: 'browser',
      version: readVersion(),
      home,
      chooseFolders: null,
      filmDemo: async (into, { signal, onProgress }) => {
        await buildDemoLesson(into, {
          signal,
          replace: true,
          onProgress: ({ done, total }) => onProgress({ step: 'film', done, total }),
        });
      },
      onFault: (trace, fault) => terminal.say(`! fault ${trace}: ${describeFault(fault)}\n`),
    });
    if (wanted !== '') {
      const opened = await held.desk.openFirst(wanted);
      sayProblems(terminal, opened.problems, PLAIN_NAMES);
      if (!opened.ok) return 2;
    }
    held.served = await serveDesk(held.desk, { port, pageFolder: path.join(ROOT, 'dist', 'renderer') });
    if (port !== 0 && held.served.port !== port) {
      terminal.say(`Port ${port} is taken by another program, so this is port ${held.served.port}.\n`);
    }
    await show(held.served.makeAddress(), options, terminal);
    await waitForEnd(terminal.signal);
    return 0;
  } finally {
    await held.served?.close();
    await held.desk?.close();
    claimed.claim.release();
  }
}

async function showOther(
  address: string,
  options: DeskCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (address === '') {
    terminal.say('! Another Routemark is just starting or ending. Try again in a moment.\n');
    return 2;
  }
  terminal.say('Routemark is running already; this is its window.\n');
  await show(address, options, terminal);
  return 0;
}

async function show(address: string, options: DeskCommandOptions, terminal: Terminal): Promise<void> {
  const shown = options.open ? await openBrowser(address) : 'none';
  if (shown === 'none') terminal.write(`Open this address once, within two minutes: ${address}\n`);
  else if (shown === 'tab') terminal.say('Routemark is in your browser. Ctrl-C ends it.\n');
  else terminal.say('Routemark is in a window of its own. Ctrl-C ends it.\n');
}

function waitForEnd(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    // The server holds the process; Ctrl-C and the system's wish to end it let it go.
    signal.addEventListener('abort', () => resolve(), { once: true });
    process.once('SIGTERM', () => resolve());
  });
}

function readVersion(): string {
  const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as {
    version: string;
  };
  return version;
}

function describeFault(fault: unknown): string {
  return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
}
