import { existsSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const GUARD = fileURLToPath(new URL('./loopback-guard.cjs', import.meta.url));
const log = path.join(tmpdir(), `routemark-other-hosts-${process.pid}`);

/** Guards this process, and every Node process that a test starts with its environment. */
export function guardAgainstOtherHosts(): void {
  process.env.ROUTEMARK_OTHER_HOSTS = log;
  const options = process.env.NODE_OPTIONS ?? '';
  if (!options.includes(GUARD))
    process.env.NODE_OPTIONS = `${options} --require ${JSON.stringify(GUARD)}`.trim();
  createRequire(import.meta.url)(GUARD);
}

/** What tried to reach another host since this was last asked, a line each. */
export function takeAttempts(): readonly string[] {
  if (!existsSync(log)) return [];
  const lines = readFileSync(log, 'utf8').split('\n').slice(0, -1);
  rmSync(log);
  return lines;
}
