import { describe, expect, test } from 'vitest';
import { findRefusal } from '../../../../src-core/host/loopback/guard.ts';
import { openOpeningKeys } from '../../../../src-core/host/loopback/keys.ts';

const SECRET = 's'.repeat(43);
const OWN = {
  host: '127.0.0.1:4000',
  origin: 'http://127.0.0.1:4000',
  cookie: `routemark-4000=${SECRET}`,
  'sec-fetch-site': 'same-origin',
};

function judge(method: string, pathname: string, headers: Readonly<Record<string, string | null>>) {
  const all: Readonly<Record<string, string | null>> = { ...OWN, ...headers };
  return (
    findRefusal({ method, pathname, header: (name) => all[name] ?? null }, 4000, SECRET)?.why ?? 'let in'
  );
}

describe('a request to the desk', () => {
  test('of our own page is let in', () => {
    expect(judge('POST', '/call', {})).toBe('let in');
    expect(judge('GET', '/media/x', { origin: null })).toBe('let in');
    expect(judge('GET', '/', { origin: null, 'sec-fetch-site': 'none' })).toBe('let in');
  });

  test.each([
    'localhost:4000',
    '127.0.0.1',
    '127.0.0.1:4001',
    'evil.example:4000',
    '127.0.0.1.evil.example:4000',
    '[::1]:4000',
    '',
    null,
  ])('for the host %j is turned away, whatever else it has', (host) => {
    expect(judge('POST', '/call', { host })).toBe('host');
    expect(judge('GET', '/open', { host })).toBe('host');
  });

  test.each([
    'http://evil.example',
    'https://127.0.0.1:4000',
    'http://127.0.0.1:4001',
    'http://localhost:4000',
    'null',
    '',
  ])('from the origin %j is turned away', (origin) => {
    expect(judge('POST', '/call', { origin })).toBe('origin');
    expect(judge('GET', '/media/x', { origin })).toBe('origin');
  });

  test('that changes something must say where it comes from', () => {
    expect(judge('POST', '/call', { origin: null })).toBe('origin');
    expect(judge('PUT', '/inbox/x/0', { origin: null })).toBe('origin');
  });

  test.each(['cross-site', 'same-site'])('caused by another page (%s) is turned away', (site) => {
    expect(judge('GET', '/media/x', { origin: null, 'sec-fetch-site': site })).toBe('site');
  });

  test.each([
    null,
    '',
    'routemark-4000=',
    `routemark-4000=${'t'.repeat(43)}`,
    `other=${SECRET}`,
    `routemark-4001=${SECRET}`,
    `routemark-4000=${SECRET}x`,
  ])('with the cookie %j is turned away', (cookie) => {
    expect(judge('GET', '/', { origin: null, cookie })).toBe('cookie');
  });

  test('finds its cookie among others', () => {
    expect(
      judge('GET', '/', {
        origin: null,
        cookie: `a=b; routemark-4001=${'t'.repeat(43)}; routemark-4000=${SECRET}; c`,
      }),
    ).toBe('let in');
  });

  test.each(['OPTIONS', 'DELETE', 'PATCH', 'TRACE', 'CONNECT'])('by %s is turned away', (method) => {
    expect(judge(method, '/call', {})).toBe('method');
  });

  test('for the opening address needs no cookie, and that alone', () => {
    const none = { origin: null, cookie: null, 'sec-fetch-site': 'none' };
    expect(judge('GET', '/open', none)).toBe('let in');
    expect(judge('GET', '/open/', none)).toBe('cookie');
    expect(judge('POST', '/open', { ...none, origin: OWN.origin })).toBe('cookie');
  });
});

describe('an opening key', () => {
  test('is good once', () => {
    const keys = openOpeningKeys(() => 0);
    const key = keys.make();
    expect([keys.take(key), keys.take(key), keys.take('')]).toEqual([true, false, false]);
  });

  test('is not good after two minutes', () => {
    let nowMs = 0;
    const keys = openOpeningKeys(() => nowMs);
    const key = keys.make();
    nowMs = 120_000;
    expect(keys.take(key)).toBe(false);
  });
});
