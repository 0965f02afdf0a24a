import { type ChildProcess, spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundleProgram } from './bundle-program.ts';

const LOADER = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
/** Where the command line starts. */
export const MAIN = new URL('../../src-core/cli/main.ts', import.meta.url);

/** How a run of the command line ended, and all it printed. */
export interface CommandEnd {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Where and how to run; everything may be left out. */
export interface CommandOptions {
  readonly cwd?: string;
  /** What the standard input holds; nothing unless given. */
  readonly input?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** The source as the README's commands run it; otherwise the same, bundled. */
  readonly isFromSource?: boolean;
  /** The user to run as, for a process of root. */
  readonly user?: number;
}

/** A run of the command line under way. */
export interface RunningCommand {
  readonly child: ChildProcess;
  readonly ended: Promise<CommandEnd>;
  /** What Ctrl-C in a terminal does: the whole group of processes hears it. */
  readonly interrupt: () => void;
}

/** Starts the real command line as a process of its own, its streams in pipes. */
export function startRoutemark(args: readonly string[], options: CommandOptions = {}): RunningCommand {
  const { cwd, input = '', env = {}, user, isFromSource = false } = options;
  const start = isFromSource ? ['--import', LOADER, fileURLToPath(MAIN)] : [bundleProgram(MAIN)];
  const child = spawn(process.execPath, [...start, ...args], {
    ...(cwd !== undefined && { cwd }),
    ...(user !== undefined && { uid: user, gid: user }),
    env: { ...process.env, ...env },
    detached: true,
  });
  let [stdout, stderr] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  child.stdin.on('error', () => {});
  child.stdin.end(input);
  const ended = new Promise<CommandEnd>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, stdout, stderr }));
  });
  return {
    child,
    ended,
    interrupt: () => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGINT');
    },
  };
}

/** Runs the command line to its end. */
export function routemark(args: readonly string[], options: CommandOptions = {}): Promise<CommandEnd> {
  return startRoutemark(args, options).ended;
}
