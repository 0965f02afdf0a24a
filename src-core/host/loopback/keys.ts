import { randomBytes, timingSafeEqual } from 'node:crypto';
import { chmod, mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { writeFileAtomically } from '../atomic-write.ts';

/** How long an opening address is good: long enough for a slow browser to start. */
const KEY_MS = 120_000;

/** Keys in opening addresses, each good once. */
export interface OpeningKeys {
  readonly make: () => string;
  /** Takes a key; true where it was good. It is not any more. */
  readonly take: (key: string) => boolean;
}

/** No key is out yet. `nowMs` may count from anywhere. */
export function openOpeningKeys(nowMs: () => number): OpeningKeys {
  const keys = new Map<string, number>();
  return {
    make: () => {
      const key = randomBytes(24).toString('base64url');
      keys.set(key, nowMs() + KEY_MS);
      return key;
    },
    take: (given) => {
      const found = [...keys].find(([key]) => isSameSecret(key, given));
      if (!found) return false;
      keys.delete(found[0]);
      return nowMs() < found[1];
    },
  };
}

/** Whether two secrets are the same, in a time that does not tell how far they agree. */
export function isSameSecret(one: string, other: string): boolean {
  const [left, right] = [Buffer.from(one), Buffer.from(other)];
  return left.length === right.length && timingSafeEqual(left, right);
}

const SECRET = /^[A-Za-z0-9_-]{43}$/;

/**
 * The secret that a browser is given in its cookie. Kept for this user alone, so that a window goes on after the
 * program was started again; where it cannot be kept, good for this run.
 */
export async function readCookieSecret(home: string): Promise<string> {
  const file = path.join(home, 'window-key');
  const kept = (await readFile(file, 'utf8').catch(() => '')).trim();
  if (SECRET.test(kept)) return kept;
  const secret = randomBytes(32).toString('base64url');
  await mkdir(home, { recursive: true, mode: 0o700 }).catch(() => {});
  const written = await writeFileAtomically(file, `${secret}\n`);
  if (written.ok) await chmod(file, 0o600).catch(() => {});
  return secret;
}
