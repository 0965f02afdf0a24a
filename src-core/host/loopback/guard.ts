import { isSameSecret } from './keys.ts';

/**
 * The name of the cookie that lets a browser in. Cookies go by address and not by port, so that two desks of this
 * machine would take each other's away under one name.
 */
export function getCookieName(port: number): string {
  return `routemark-${port}`;
}

/** What a request is judged by. */
export interface GuardedRequest {
  readonly method: string;
  readonly pathname: string;
  /** A header's value; null where it was not sent. */
  readonly header: (name: string) => string | null;
}

/** Why a request is turned away, as an HTTP status. */
export interface Refusal {
  readonly status: 401 | 403 | 405 | 421;
  readonly why: 'host' | 'method' | 'site' | 'origin' | 'cookie';
}

const METHODS = ['GET', 'HEAD', 'POST', 'PUT'];

/**
 * Judges every request before anything else looks at it; null lets it in.
 *
 * - Host must be ours: a foreign name that was made to point at this machine is turned away (DNS rebinding).
 * - What another site, or another port of this machine, has caused is turned away, by Sec-Fetch-Site and by Origin.
 * - Whatever changes something must say where it comes from, and that must be here.
 * - But for the opening address, the cookie must be there.
 */
export function findRefusal(request: GuardedRequest, port: number, secret: string): Refusal | null {
  const { method, pathname, header } = request;
  const here = `127.0.0.1:${port}`;
  if (header('host') !== here) return { status: 421, why: 'host' };
  if (!METHODS.includes(method)) return { status: 405, why: 'method' };
  const isOpening = pathname === '/open' && method === 'GET';
  const site = header('sec-fetch-site');
  if (site !== null && site !== 'same-origin' && site !== 'none' && !isOpening)
    return { status: 403, why: 'site' };
  const origin = header('origin');
  const mustName = method === 'POST' || method === 'PUT';
  if (origin === null ? mustName : origin !== `http://${here}`) return { status: 403, why: 'origin' };
  if (isOpening) return null;
  return hasCookie(header('cookie'), getCookieName(port), secret) ? null : { status: 401, why: 'cookie' };
}

function hasCookie(header: string | null, wanted: string, secret: string): boolean {
  const cookies = (header ?? '').split(';').map((part) => part.trim().split('='));
  return cookies.some(([name, value = '']) => name === wanted && isSameSecret(value, secret));
}
